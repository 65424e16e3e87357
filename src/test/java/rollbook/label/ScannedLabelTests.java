package rollbook.label;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.http.Cookie;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.testing.DemoTest;

/** A phone scans a label of the demo's, and nobody is signed in on it yet. */
@DemoTest
class ScannedLabelTests {
    private static final String ADDRESS = "http://localhost/p/TIDECLERK/find?code=SHUTTLE-01";

    @Autowired
    MockMvcTester mvc;

    @Test
    void whoScansALabelSignsInAndIsThenOnTheItemsPage() {
        MvcTestResult scanned = mvc.get().uri(ADDRESS).exchange();
        assertThat(scanned).hasStatus3xxRedirection().redirectedUrl().endsWith("/sign-in");
        Cookie[] wanted = scanned.getResponse().getCookies();
        MvcTestResult signedIn = mvc.post()
                .uri("/sign-in")
                .cookie(wanted)
                .with(SecurityMockMvcRequestPostProcessors.csrf())
                .param("username", "reader")
                .param("password", "rollbook-demo")
                .exchange();
        assertThat(signedIn).redirectedUrl().startsWith(ADDRESS);
        assertThat(mvc.get()
                        .uri(ADDRESS)
                        .cookie(signedIn.getResponse().getCookie("SESSION"))
                        .exchange())
                .redirectedUrl()
                .startsWith("/p/TIDECLERK/media/");
    }
}
