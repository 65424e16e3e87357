package rollbook.production;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import jakarta.servlet.http.Cookie;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.people.SetupCode;

/** The first start, against a database of its own that each test finds without accounts. */
@SpringBootTest(properties = {"rollbook.jobs.enabled=false", "rollbook.test.database=setup"})
@AutoConfigureMockMvc
class SetUpTests {
    private static final String PASSWORD = "four words in a row";

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    SetupCode setupCode;

    @BeforeEach
    void forgetEverybody() {
        jdbc.sql("truncate people_person, people_setup_code, production_production cascade")
                .update();
    }

    @Test
    void theRightCodeMakesAnAccountAndAProductionAndThePasswordSignsIn() throws Exception {
        var done = setUp(setupCode.renew(), "ines", "TIDE");
        assertThat(done).hasStatus3xxRedirection().hasRedirectedUrl("/sign-in");
        assertThat(done.getMvcResult().getFlashMap().get("notice")).isNotNull();
        assertThat(count("production_member")).isOne();
        assertThat(count("production_clearing_policy"))
                .as("one for each kind of medium that holds files")
                .isEqualTo(4);
        assertThat(jdbc.sql("select time_zone || ' ' || currency from production_production where code = 'TIDE'")
                        .query(String.class)
                        .single())
                .isEqualTo("Europe/Lisbon EUR");

        assertThat(signIn("INES", PASSWORD)).hasStatus3xxRedirection().hasRedirectedUrl("/");
        assertThat(signIn("ines", PASSWORD + "!")).hasStatus3xxRedirection().hasRedirectedUrl("/sign-in?failed");
        assertThat(signIn("nobody", PASSWORD)).hasStatus3xxRedirection().hasRedirectedUrl("/sign-in?failed");
    }

    @Test
    void aSessionOfTheNewAccountOpensItsProduction() {
        setUp(setupCode.renew(), "ines", "TIDE");
        Cookie session = signIn("ines", PASSWORD).getMvcResult().getResponse().getCookie("SESSION");
        assertThat(session).isNotNull();
        assertThat(mvc.get().uri("/").cookie(session)).hasRedirectedUrl("/p/TIDE/today");
        assertThat(mvc.get().uri("/p/TIDE/settings").cookie(session)).hasStatusOk();
        assertThat(mvc.get().uri("/p/TIDE/settings")).hasStatus3xxRedirection();
    }

    /** That the hash starts so is the PHC string format; the identifier is that of RFC 9106's Argon2id. */
    @Test
    void thePasswordIsKeptAsAnArgon2idHashOnly() {
        setUp(setupCode.renew(), "ines", "TIDE");
        assertThat(jdbc.sql("select password_hash from people_person")
                        .query(String.class)
                        .single())
                .startsWith("$argon2id$v=19$")
                .doesNotContain(PASSWORD);
    }

    @Test
    void aWrongCodeSavesNothingAndKeepsWhatWasTypedExceptThePasswords() throws Exception {
        setupCode.renew();
        var refused = setUp("ABCD-EFGH-JKLM-NPQR", "ines", "TIDE");
        assertThat(refused).hasStatus(422);
        Document page = page(refused);
        assertThat(page.select("#oneTimeCode-error").text()).contains("not the code of the latest start");
        assertThat(page.select("#signInName").val()).isEqualTo("ines");
        assertThat(page.select("#code").val()).isEqualTo("TIDE");
        assertThat(page.select("#zone option[selected]").val()).isEqualTo("Europe/Lisbon");
        assertThat(page.select("#password").val()).isEmpty();
        assertThat(page.select("#repeated").val()).isEmpty();
        assertThat(count("people_person") + count("production_production")).isZero();
    }

    @Test
    void aRestartMakesTheCodeBeforeItWorthless() {
        String before = setupCode.renew();
        setupCode.renew();
        assertThat(setUp(before, "ines", "TIDE")).hasStatus(422);
    }

    @Test
    void everythingThatIsWrongIsSaidBesideItsFieldAndTheCodeStaysGood() throws Exception {
        String code = setupCode.renew();
        var wrong = mvc.post()
                .uri("/set-up")
                .with(csrf())
                .param("oneTimeCode", code)
                .param("signInName", "ines quill")
                .param("password", "short")
                .param("repeated", "shorter")
                .param("code", "a tide")
                .param("zone", "Atlantis/Deep")
                .param("currency", "XYZ")
                .exchange();
        assertThat(wrong).hasStatus(422);
        assertThat(page(wrong).select(".error-summary a").eachAttr("href"))
                .containsExactlyInAnyOrder(
                        "#displayName", "#signInName", "#password", "#code", "#name", "#zone", "#currency");
        assertThat(setUp(code, "ines", "TIDE")).hasRedirectedUrl("/sign-in");
    }

    @Test
    void anEmptyFormIsAskedForEachThingOnce() throws Exception {
        setupCode.renew();
        var empty = mvc.post().uri("/set-up").with(csrf()).exchange();
        assertThat(empty).hasStatus(422);
        assertThat(page(empty).select(".error-summary a").eachAttr("href"))
                .containsExactlyInAnyOrder(
                        "#oneTimeCode",
                        "#displayName",
                        "#signInName",
                        "#password",
                        "#code",
                        "#name",
                        "#zone",
                        "#currency");
        assertThat(page(empty).select(".error-summary a").eachText()).doesNotHaveDuplicates();
    }

    @Test
    void passwordsThatDifferAreRefused() throws Exception {
        var differing = mvc.post()
                .uri("/set-up")
                .with(csrf())
                .param("oneTimeCode", setupCode.renew())
                .param("displayName", "Ines Quill")
                .param("signInName", "ines")
                .param("password", PASSWORD)
                .param("repeated", PASSWORD + " ")
                .param("code", "TIDE")
                .param("name", "A Long Tide")
                .param("zone", "UTC")
                .param("currency", "EUR")
                .exchange();
        assertThat(differing).hasStatus(422);
        assertThat(page(differing).select(".error-summary a").eachAttr("href")).containsExactly("#repeated");
        assertThat(count("people_person")).isZero();
    }

    @Test
    void thePageIsClosedOnceThereIsAnAccount() throws Exception {
        assertThat(mvc.get().uri("/set-up")).hasStatusOk();
        assertThat(mvc.get().uri("/sign-in")).hasRedirectedUrl("/set-up");
        setUp(setupCode.renew(), "ines", "TIDE");

        assertThat(mvc.get().uri("/set-up")).hasStatus(404);
        var late = setUp(setupCode.renew(), "rui", "EBB");
        assertThat(late).hasStatus(404);
        assertThat(page(late).select("main").text()).contains("somebody else was faster", "nothing of yours was saved");
        assertThat(count("people_person")).isOne();
        assertThat(mvc.get().uri("/sign-in")).hasStatusOk();
    }

    @Test
    void ofTwoPeopleAtOnceOneWinsAndTheOtherIsTold() throws Exception {
        String code = setupCode.renew();
        CyclicBarrier together = new CyclicBarrier(2);
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            List<Callable<MvcTestResult>> attempts = List.of(
                    () -> {
                        together.await();
                        return setUp(code, "ines", "TIDE");
                    },
                    () -> {
                        together.await();
                        return setUp(code, "rui", "EBB");
                    });
            List<Future<MvcTestResult>> results = threads.invokeAll(attempts);
            List<Integer> statuses = List.of(
                    results.get(0).get().getMvcResult().getResponse().getStatus(),
                    results.get(1).get().getMvcResult().getResponse().getStatus());
            assertThat(statuses).containsExactlyInAnyOrder(302, 404);
        } finally {
            threads.shutdownNow();
        }
        assertThat(count("people_person")).isOne();
        assertThat(count("production_production")).isOne();
    }

    @Test
    void withoutTheFormsOwnTokenItIsRefused() {
        setupCode.renew();
        assertThat(mvc.post().uri("/set-up")).hasStatus(403);
        assertThat(mvc.post().uri("/sign-in").param("username", "ines").param("password", PASSWORD))
                .hasStatus(403);
    }

    private MvcTestResult setUp(String code, String signInName, String productionCode) {
        return mvc.post()
                .uri("/set-up")
                .with(csrf())
                .param("oneTimeCode", code)
                .param("displayName", "Ines Quill")
                .param("signInName", signInName)
                .param("password", PASSWORD)
                .param("repeated", PASSWORD)
                .param("code", productionCode)
                .param("name", "A Long Tide")
                .param("zone", "Europe/Lisbon")
                .param("currency", "EUR")
                .exchange();
    }

    private MvcTestResult signIn(String name, String password) {
        return mvc.post()
                .uri("/sign-in")
                .with(csrf())
                .param("username", name)
                .param("password", password)
                .exchange();
    }

    private long count(String table) {
        return jdbc.sql("select count(*) from " + table).query(Long.class).single();
    }

    private static Document page(MvcTestResult result) throws Exception {
        return Jsoup.parse(result.getMvcResult().getResponse().getContentAsString());
    }
}
