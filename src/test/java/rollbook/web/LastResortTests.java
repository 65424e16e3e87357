package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;

@SiteTest
class LastResortTests {
    @Autowired
    LastResort filter;

    private final MockHttpServletRequest request = new MockHttpServletRequest("GET", "/p/TIDE/today");
    private final MockHttpServletResponse response = new MockHttpServletResponse();

    @Test
    void whatFailsBeforeAPageIsReachedIsAnsweredInWordsAndWithoutTheDatabase() throws Exception {
        filter.doFilter(request, response, (req, res) -> {
            res.getWriter().write("half a page");
            throw new DataAccessResourceFailureException("connection to 127.0.0.1 refused");
        });
        assertThat(response.getStatus()).isEqualTo(500);
        var page = Jsoup.parse(response.getContentAsString());
        assertThat(page.select("h1").text()).isEqualTo("Something broke");
        assertThat(page.select("code").text()).matches("Reference for the log: [0-9a-f]{8}");
        assertThat(page.text()).doesNotContain("half a page", "127.0.0.1", "Exception");
    }

    @Test
    void anAnswerThatIsOnItsWayIsNotTouched() {
        assertThatThrownBy(() -> filter.doFilter(request, response, (req, res) -> {
                    res.flushBuffer();
                    throw new IllegalStateException("too late");
                }))
                .hasMessage("too late");
        assertThat(response.getStatus()).isEqualTo(200);
    }

    @Test
    void nobodyIsToldThatTheSenderIsGone() {
        assertThatThrownBy(() -> filter.doFilter(request, response, (req, res) -> {
                    throw new IOException("Broken pipe");
                }))
                .hasMessage("Broken pipe");
    }
}
