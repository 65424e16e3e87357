package rollbook.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockHttpSession;
import rollbook.web.Refresh;

class UnusedSessionsTests {
    private final MockHttpSession session = new MockHttpSession();
    private Instant now = Instant.parse("2026-07-14T17:54:00Z");

    UnusedSessionsTests() {
        session.setMaxInactiveInterval((int) Duration.ofHours(12).toSeconds());
    }

    @Test
    void aPageThatRefreshesItselfKeepsNoSessionThatNobodyUses() throws Exception {
        request(null);
        after(Duration.ofHours(12)).request("page");
        assertThat(session.isInvalid()).isFalse();
        after(Duration.ofSeconds(1)).request("page");
        assertThat(session.isInvalid()).isTrue();
    }

    @Test
    void whoGoesOnWorkingStaysSignedIn() throws Exception {
        request(null);
        after(Duration.ofHours(11)).request("page");
        request(null);
        after(Duration.ofHours(11)).request("page");
        assertThat(session.isInvalid()).isFalse();
    }

    @Test
    void aWallIsInUseForAsLongAsItHangsThere() throws Exception {
        request(null);
        for (int halfDay = 0; halfDay < 14; halfDay++) {
            after(Duration.ofHours(12)).request("wall");
        }
        assertThat(session.isInvalid()).isFalse();
    }

    @Test
    void withoutAnEndSessionsDoNotEnd() throws Exception {
        session.setMaxInactiveInterval(-1);
        request(null);
        after(Duration.ofDays(30)).request("page");
        assertThat(session.isInvalid()).isFalse();
    }

    private UnusedSessionsTests after(Duration pause) {
        now = now.plus(pause);
        return this;
    }

    private void request(String refresh) throws Exception {
        MockHttpServletRequest request = new MockHttpServletRequest("GET", "/p/TIDE/today");
        request.setSession(session);
        if (refresh != null) {
            request.addHeader(Refresh.HEADER, refresh);
        }
        Clock clock = ((InstantSource) () -> now).withZone(ZoneOffset.UTC);
        new UnusedSessions(clock).doFilter(request, new MockHttpServletResponse(), new MockFilterChain());
    }
}
