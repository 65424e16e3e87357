package rollbook.people;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import jakarta.servlet.http.HttpSession;
import java.io.IOException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.springframework.boot.security.autoconfigure.web.servlet.SecurityFilterProperties;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import rollbook.web.Refresh;

/**
 * Ends sessions that no person has used for as long as an unused one may last. Pages that refresh themselves would
 * keep them for ever: to the container each request is a use.
 */
@Component
@Order(SecurityFilterProperties.DEFAULT_FILTER_ORDER - 1)
class UnusedSessions extends OncePerRequestFilter {
    private static final String USED_AT_MILLIS = UnusedSessions.class.getName() + ".usedAtMillis";

    /** So often at most it is written down that a session is in use. */
    private static final Duration NOTED_EVERY = Duration.ofMinutes(5);

    /** Whether these are fetched tells nothing, and asking for the session would read the database for each. */
    private static final List<String> ASSETS = List.of("/css/", "/js/", "/webjars/", "/img/");

    private final Clock clock;

    UnusedSessions(Clock clock) {
        this.clock = clock;
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        String path = request.getRequestURI().substring(request.getContextPath().length());
        return ASSETS.stream().anyMatch(path::startsWith);
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        HttpSession session = request.getSession(false);
        if (session != null) {
            note(session, Refresh.isUnattended(request));
        }
        chain.doFilter(request, response);
    }

    private void note(HttpSession session, boolean unattended) {
        long now = clock.millis();
        Long usedAt = (Long) session.getAttribute(USED_AT_MILLIS);
        if (!unattended) {
            if (usedAt == null || now - usedAt >= NOTED_EVERY.toMillis()) {
                session.setAttribute(USED_AT_MILLIS, now);
            }
        } else if (usedAt != null && isOver(session, now - usedAt)) {
            session.invalidate();
        }
    }

    private static boolean isOver(HttpSession session, long unusedMillis) {
        int seconds = session.getMaxInactiveInterval();
        return seconds > 0 && unusedMillis > Duration.ofSeconds(seconds).toMillis();
    }
}
