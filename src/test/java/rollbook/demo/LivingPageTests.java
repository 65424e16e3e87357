package rollbook.demo;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.http.Cookie;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.testing.DemoTest;

/** The living page shows every fragment in each of its states, and what it shows holds together. */
@DemoTest
class LivingPageTests {
    private static final String PAGE = "/p/TIDECLERK/components";
    private static final Path TEMPLATES = Path.of("src/main/resources/templates");
    private static final Pattern DECLARED = Pattern.compile("th:fragment=\"([\\w-]+)");
    private static final Pattern USED = Pattern.compile("~\\{((?:fragments|layout|demo)/[\\w-]+) :: ([\\w-]+)");

    @Autowired
    MockMvcTester mvc;

    private Cookie session = new Cookie("SESSION", "none yet");

    @BeforeEach
    void signIn() {
        session = mvc.post()
                .uri("/sign-in")
                .with(SecurityMockMvcRequestPostProcessors.csrf())
                .param("username", "reader")
                .param("password", "rollbook-demo")
                .exchange()
                .getResponse()
                .getCookie("SESSION");
    }

    @Test
    void everyFragmentIsShown() throws IOException {
        Set<String> shown = new TreeSet<>();
        Deque<String> ahead = new ArrayDeque<>(List.of("demo/components"));
        Set<String> read = new TreeSet<>(ahead);
        while (!ahead.isEmpty()) {
            String template = Files.readString(TEMPLATES.resolve(ahead.removeFirst() + ".html"));
            USED.matcher(template).results().forEach(use -> {
                shown.add(use.group(1) + " :: " + use.group(2));
                if (read.add(use.group(1))) {
                    ahead.addLast(use.group(1));
                }
            });
        }
        assertThat(declared())
                .hasSizeGreaterThan(20)
                .allSatisfy(fragment -> assertThat(shown)
                        .as("templates/demo/components*.html show %s", fragment)
                        .contains(fragment));
    }

    @Test
    void everyVerdictIsAWordWithAMarkOfItsOwn() throws IOException {
        var verdicts = page(mvc.get().uri(PAGE), 200).select("#verdicts .verdict");
        assertThat(new TreeSet<>(verdicts.eachText())).isEqualTo(words("web.verdict."));
        assertThat(verdicts.stream()
                        .map(verdict -> verdict.text() + verdict.select("path").outerHtml())
                        .distinct())
                .as("a mark for each word")
                .hasSize(words("web.verdict.").size());
        assertThat(verdicts.stream()
                        .map(verdict -> verdict.select("path").outerHtml())
                        .distinct())
                .as("a word for each mark")
                .hasSize(words("web.verdict.").size());
    }

    @Test
    void everyStateOfACardIsThere() throws IOException {
        assertThat(new TreeSet<>(page(mvc.get().uri(PAGE), 200)
                        .select("#card-states .tag")
                        .eachText()))
                .isEqualTo(words("web.card-state."));
    }

    @Test
    void thePageSaysWhereItIsAndAnswersFirst() throws IOException {
        Document page = page(mvc.get().uri("/p/TIDECLERK/media"), 200);
        assertThat(page.title()).startsWith(page.select("h1").text() + " · ").endsWith(" · Rollbook");
        assertThat(page.select("meta[name=description]").attr("content"))
                .isNotEmpty()
                .isEqualTo(page.select("#main .sentence").text());
        assertThat(page.select(".places a[aria-current=page]").eachText()).containsExactly("Media");
        assertThat(page.select("footer.foot").text()).contains(" time (UTC");
        assertThat(page.select("form[action=/sign-out][method=post]")).isNotEmpty();
        assertThat(page.select("form[action=/p/TIDECLERK/find] input[name=code]"))
                .hasSize(1);
    }

    @Test
    void noTwoElementsShareAnId() throws IOException {
        assertThat(page(mvc.get().uri(PAGE), 200).select("[id]").eachAttr("id")).doesNotHaveDuplicates();
        assertThat(page(wrong(), 422).select("[id]").eachAttr("id")).doesNotHaveDuplicates();
    }

    @Test
    void aMistypedNumberKeepsItsValueAndLeaksNoJava() throws IOException {
        Document page = page(mvc.get().uri(PAGE + "/wrong-form?capacityGb=many"), 422);
        assertThat(page.title()).startsWith("Error: ");
        assertThat(page.select("#capacityGb").val()).isEqualTo("many");
        assertThat(page.select("#" + page.select("#capacityGb").attr("aria-describedby"))
                        .text())
                .isEqualTo("Error: Write a whole number in digits.");
        assertThat(page.text()).doesNotContain("java.", "Exception");
    }

    @Test
    void whatIsWrongIsListedOnTopAndSaidBesideItsField() throws IOException {
        Document page = page(wrong(), 422);
        assertThat(page.select(".error-summary a").eachText()).contains("Code: Fill this in.", "Unit: Fill this in.");
        assertThat(page.select(".error-summary a").eachAttr("href"))
                .as("in the order of the fields")
                .isEqualTo(page
                        .select(
                                "main form[method=post] .wrong [id][aria-invalid], main form[method=post] fieldset.wrong")
                        .eachAttr("id")
                        .stream()
                        .map(id -> "#" + id)
                        .toList());
        for (Element link : page.select(".error-summary a")) {
            Element field = page.select(link.attr("href")).first();
            assertThat(field).as(link.attr("href")).isNotNull();
            assertThat(field.attr("aria-describedby").split(" ")).contains(field.id() + "-error");
            assertThat(link.text())
                    .endsWith(page.select("#" + field.id() + "-error span:not(.hidden)")
                            .text());
        }
        assertThat(page.select("#code").attr("aria-describedby")).isEqualTo("code-hint code-error");
        assertThat(page.select("#secret-error").text()).isEqualTo("Error: Use 12 to 200 characters.");
        assertThat(page.select("#secret").val())
                .as("a password is never sent back")
                .isEmpty();
    }

    @Test
    void aRightFormIsToldSoOnceAfterTheRedirect() throws IOException {
        MvcTestResult sent = form("CARD-014").exchange();
        assertThat(sent).hasStatus3xxRedirection().hasRedirectedUrl(PAGE);
        var notice = sent.getMvcResult().getFlashMap().get("notice");
        assertThat(page(mvc.get().uri(PAGE).flashAttr("notice", notice), 200)
                        .select("#flash")
                        .text())
                .isEqualTo("The form with CARD-014 is right. Nothing was kept.");
        assertThat(page(mvc.get().uri(PAGE), 200).select("#flash").text()).isEmpty();
    }

    @Test
    void aRuleAboutTheWholeFormIsToldOnTop() throws IOException {
        assertThat(page(form("CARD-015"), 422).select(".error-summary").text())
                .contains("The code that is typed below is not the one above.");
    }

    @Test
    void pagesThatSayThatSomethingWentWrongSayWhatToDo() throws IOException {
        for (int status : new int[] {404, 409, 413}) {
            assertThat(page(mvc.get().uri(PAGE + "/status/" + status), status).select("main > p"))
                    .as("status %d", status)
                    .isNotEmpty();
        }
    }

    private MockMvcTester.MockMvcRequestBuilder wrong() {
        return mvc.post()
                .uri(PAGE)
                .with(SecurityMockMvcRequestPostProcessors.csrf())
                .param("code", " ")
                .param("capacityGb", "0")
                .param("secret", "short")
                .param("unit", "")
                .param("mail", "nobody")
                .param("_hired", "on");
    }

    private MockMvcTester.MockMvcRequestBuilder form(String typed) {
        return mvc.post()
                .uri(PAGE)
                .with(SecurityMockMvcRequestPostProcessors.csrf())
                .cookie(session)
                .param("code", "CARD-014")
                .param("arrives", "2026-07-16")
                .param("secret", "long enough for this")
                .param("unit", "1")
                .param("state", "HELD")
                .param("verdict", "PROVEN")
                .param("states", "HELD")
                .param("_hired", "on")
                .param("note", "from the van")
                .param("typed", typed);
    }

    private Document page(MockMvcTester.MockMvcRequestBuilder request, int status) throws IOException {
        MvcTestResult answer = request.cookie(session).exchange();
        String html = answer.getResponse().getContentAsString(StandardCharsets.UTF_8);
        assertThat(answer).hasStatus(status);
        assertThat(html).as("texts that are missing").doesNotContain("??");
        return Jsoup.parse(html);
    }

    private static Stream<String> declared() throws IOException {
        try (Stream<Path> files = Files.list(TEMPLATES.resolve("fragments"))) {
            Stream.Builder<String> names = Stream.builder();
            for (Path file : files.sorted().toList()) {
                String template = "fragments/" + file.getFileName().toString().replace(".html", "");
                DECLARED.matcher(Files.readString(file))
                        .results()
                        .forEach(name -> names.add(template + " :: " + name.group(1)));
            }
            return names.build();
        }
    }

    /** The words of all messages whose keys begin so. */
    private static Set<String> words(String prefix) throws IOException {
        var texts = new Properties();
        try (var reader = Files.newBufferedReader(Path.of("src/main/resources/messages/web.properties"))) {
            texts.load(reader);
        }
        Set<String> words = new TreeSet<>();
        texts.stringPropertyNames().stream()
                .filter(key -> key.startsWith(prefix))
                .forEach(key -> words.add(texts.getProperty(key)));
        return words;
    }
}
