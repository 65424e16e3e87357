package rollbook;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.http.Cookie;
import java.net.URI;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpHeaders;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.testing.DemoTest;
import rollbook.testing.Jobs;
import rollbook.web.Refresh;

/** A page in which nothing changed is the same when it is asked for again: else open pages fetch all of it for nothing. */
@DemoTest
class UnchangedPagesTests {
    @Autowired
    MockMvcTester mvc;

    @Autowired
    Jobs jobs;

    private Cookie session;

    @BeforeEach
    void signIn() {
        jobs.run();
        session = mvc.post()
                .uri("/sign-in")
                .with(SecurityMockMvcRequestPostProcessors.csrf())
                .param("username", "administrator")
                .param("password", "rollbook-demo")
                .exchange()
                .getResponse()
                .getCookie("SESSION");
    }

    @Test
    void askedForAgainEveryPageThatTodayLeadsToIsTheSame() throws Exception {
        Set<String> addresses = new LinkedHashSet<>();
        String today = open("/p/TIDECLERK/today").getResponse().getContentAsString();
        for (String href : Jsoup.parse(today).select("a[href^=/p/TIDECLERK/]").eachAttr("href")) {
            addresses.add(href.replaceAll("#.*", ""));
        }
        List<String> others = new ArrayList<>();
        int asked = 0;
        for (String address : addresses) {
            MvcTestResult page = open(address);
            String fingerprint = page.getResponse().getHeader(HttpHeaders.ETAG);
            if (page.getResponse().getStatus() == 200 && fingerprint != null) {
                asked++;
                MvcTestResult again = ask(address, fingerprint);
                // A minute may have begun in between, in words that count it; not twice.
                if (again.getResponse().getStatus() == 200) {
                    again = ask(address, String.valueOf(again.getResponse().getHeader(HttpHeaders.ETAG)));
                }
                if (again.getResponse().getStatus() != 304) {
                    others.add(address);
                }
            }
        }
        assertThat(asked).isGreaterThan(15);
        assertThat(others).isEmpty();
    }

    private MvcTestResult open(String address) {
        return mvc.get().uri(URI.create(address)).cookie(session).exchange();
    }

    private MvcTestResult ask(String address, String fingerprint) {
        return mvc.get()
                .uri(URI.create(address))
                .cookie(session)
                .header(Refresh.HEADER, "page")
                .header(HttpHeaders.IF_NONE_MATCH, fingerprint)
                .exchange();
    }
}
