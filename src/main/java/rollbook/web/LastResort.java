package rollbook.web;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.util.DisconnectedClientHelper;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;

/**
 * Answers what fails before a page is reached: while the database is away not even the session can be read. Its page
 * therefore needs neither session nor database.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE)
class LastResort extends OncePerRequestFilter {
    private final ITemplateEngine templates;

    LastResort(ITemplateEngine templates) {
        this.templates = templates;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        try {
            chain.doFilter(request, response);
        } catch (ServletException | IOException | RuntimeException failure) {
            if (response.isCommitted() || DisconnectedClientHelper.isClientDisconnectedException(failure)) {
                throw failure;
            }
            answer(request, response, failure);
        }
    }

    private void answer(HttpServletRequest request, HttpServletResponse response, Exception failure)
            throws IOException {
        String reference = Failures.log(request, failure);
        Context values = new Context(request.getLocale());
        values.setVariables(Map.of("reference", reference, "base", request.getContextPath()));
        byte[] page = templates.process("error/last-resort", values).getBytes(StandardCharsets.UTF_8);
        response.reset();
        response.setStatus(HttpStatus.INTERNAL_SERVER_ERROR.value());
        response.setContentType(MediaType.TEXT_HTML_VALUE + ";charset=UTF-8");
        response.setHeader(HttpHeaders.CACHE_CONTROL, "no-store");
        response.setContentLength(page.length);
        response.getOutputStream().write(page);
    }
}
