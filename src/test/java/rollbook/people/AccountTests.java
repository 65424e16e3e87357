package rollbook.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import jakarta.servlet.http.Cookie;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.testing.PortalTest;

@PortalTest
class AccountTests {
    private static final String OLD = "the first of the passwords";
    private static final String NEW = "the second of the passwords";

    @Autowired
    MockMvcTester mvc;

    @Autowired
    People people;

    private String name;

    @BeforeEach
    void makeAnAccount() {
        name = "wren." + UUID.randomUUID().toString().substring(0, 8);
        people.add(name, "Wren Hale", OLD);
    }

    @Test
    void aNewPasswordReplacesTheOldOneAndEndsTheOtherSessions() {
        Cookie here = signIn(OLD);
        Cookie elsewhere = signIn(OLD);
        assertThat(mvc.get().uri("/account").cookie(elsewhere)).hasStatusOk();

        assertThat(change(here, OLD, NEW, NEW)).hasStatus3xxRedirection().hasRedirectedUrl("/account");

        assertThat(mvc.get().uri("/account").cookie(here)).hasStatusOk();
        assertThat(mvc.get().uri("/account").cookie(elsewhere)).hasStatus3xxRedirection();
        assertThat(attempt(OLD)).hasRedirectedUrl("/sign-in?failed");
        assertThat(attempt(NEW)).hasRedirectedUrl("/");
    }

    @Test
    void theWrongOldPasswordChangesNothing() throws Exception {
        var refused = change(signIn(OLD), NEW, NEW, NEW);
        assertThat(refused).hasStatus(422);
        assertThat(error(refused, "oldPassword")).contains("not your present password");
        assertThat(attempt(OLD)).hasRedirectedUrl("/");
    }

    @Test
    void aShortPasswordAndTwoThatDifferAreRefused() throws Exception {
        Cookie session = signIn(OLD);
        assertThat(error(change(session, OLD, "elevenchars", "elevenchars"), "newPassword"))
                .contains("Use 12 to 200 characters");
        assertThat(error(change(session, OLD, NEW, NEW + "."), "repeated")).contains("differ");
        assertThat(attempt(OLD)).hasRedirectedUrl("/");
    }

    @Test
    void theFrontPageOfAPersonWithoutProductionsSaysWhomToAsk() throws Exception {
        var front = mvc.get().uri("/").cookie(signIn(OLD)).exchange();
        assertThat(front).hasStatusOk();
        assertThat(Jsoup.parse(front.getMvcResult().getResponse().getContentAsString())
                        .select("main")
                        .text())
                .contains("Ask an administrator of your production", name)
                .doesNotContain("New production");
    }

    @Test
    void onlyAdministratorsMakeProductions() {
        Cookie session = signIn(OLD);
        assertThat(mvc.get().uri("/productions/new").cookie(session)).hasStatus(403);
        assertThat(mvc.post().uri("/productions/new").cookie(session).with(csrf()))
                .hasStatus(403);
    }

    private MvcTestResult change(Cookie session, String old, String wanted, String repeated) {
        return mvc.post()
                .uri("/account")
                .cookie(session)
                .with(csrf())
                .param("oldPassword", old)
                .param("newPassword", wanted)
                .param("repeated", repeated)
                .exchange();
    }

    private Cookie signIn(String password) {
        Cookie session = attempt(password).getMvcResult().getResponse().getCookie("SESSION");
        assertThat(session).isNotNull();
        return session;
    }

    private MvcTestResult attempt(String password) {
        return mvc.post()
                .uri("/sign-in")
                .with(csrf())
                .param("username", name)
                .param("password", password)
                .exchange();
    }

    private static String error(MvcTestResult result, String field) throws Exception {
        return Jsoup.parse(result.getMvcResult().getResponse().getContentAsString())
                .select("#" + field + "-error")
                .text();
    }
}
