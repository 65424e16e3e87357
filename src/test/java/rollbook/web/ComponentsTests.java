package rollbook.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;

/** Renders every fragment in each of its states; the pages are left in target/look to be looked at. */
@SiteTest
class ComponentsTests {
    @Autowired
    MockMvcTester mvc;

    @Test
    void everyTextOfEveryFragmentIsThere() throws IOException {
        assertThat(page("components", mvc.get().uri("/p/TIDE/rolls").exchange()).html())
                .doesNotContain("??");
        assertThat(page("wrong", mistyped()).html()).doesNotContain("??");
        assertThat(page("refused", incomplete()).html()).doesNotContain("??");
    }

    @Test
    void thePageSaysWhereItIsAndAnswersFirst() throws IOException {
        Document page = page("components", mvc.get().uri("/p/TIDE/rolls").exchange());
        assertThat(page.title()).isEqualTo("Roll A014 · A Long Tide · Rollbook");
        assertThat(page.select("h1")).singleElement().returns("Roll A014", h1 -> h1.text());
        assertThat(page.select("meta[name=description]").attr("content"))
                .isEqualTo(page.select("#main .sentence").text())
                .startsWith("3 cards may be erased now.");
        assertThat(page.select(".places a[aria-current=page]").eachText()).containsExactly("Rolls");
        assertThat(page.select("footer.foot").text()).contains("Lisbon time (UTC+01:00)");
        assertThat(page.select("form[action=/sign-out][method=post]")).isNotEmpty();
        assertThat(page.select("form[action=/p/TIDE/find] input[name=code]")).hasSize(1);
    }

    @Test
    void everyVerdictIsAWordWithAMarkOfItsOwn() throws IOException {
        var verdicts =
                page("components", mvc.get().uri("/p/TIDE/rolls").exchange()).select(".facts .verdict");
        assertThat(verdicts.eachText())
                .containsExactly("proven", "consistent", "size only", "incomplete", "failed", "unknown");
        assertThat(verdicts.select("svg").stream().map(mark -> mark.children().outerHtml()))
                .doesNotHaveDuplicates()
                .hasSize(6);
    }

    @Test
    void aMistypedNumberKeepsItsValueAndLeaksNoJava() throws IOException {
        Document page = page("wrong", mistyped());
        assertThat(page.title()).startsWith("Error: ");
        assertThat(page.select("#capacityGb").val()).isEqualTo("many");
        assertThat(page.select("#" + page.select("#capacityGb").attr("aria-describedby"))
                        .text())
                .isEqualTo("Error: Write a whole number in digits.");
        assertThat(page.text()).doesNotContain("java.", "String", "Exception");
    }

    @Test
    void whatIsWrongIsListedOnTopAndSaidBesideItsField() throws IOException {
        Document page = page("refused", incomplete());
        assertThat(page.select(".error-summary a").eachAttr("href"))
                .containsExactlyInAnyOrder("#code", "#capacityGb", "#secret", "#unit");
        assertThat(page.select(".error-summary a").eachText()).contains("Code: Fill this in.", "Unit: Fill this in.");
        for (String link : page.select(".error-summary a").eachAttr("href")) {
            assertThat(page.select(link)).as(link).hasSize(1);
        }
        assertThat(page.select("#code-error").text()).isEqualTo("Error: Fill this in.");
        assertThat(page.select("#code").attr("aria-describedby")).isEqualTo("code-hint code-error");
        assertThat(page.select("#secret-error").text()).isEqualTo("Error: Use 12 to 200 characters.");
        assertThat(page.select("#capacityGb-error").text()).isEqualTo("Error: Use 1 or more.");
        assertThat(page.select("#secret").val())
                .as("a password is never sent back")
                .isEmpty();
    }

    @Test
    void noTwoElementsShareAnId() throws IOException {
        Document page = page("components", mvc.get().uri("/p/TIDE/rolls").exchange());
        assertThat(page.select("[id]").eachAttr("id")).doesNotHaveDuplicates();
    }

    @Test
    void aNoticeIsToldOnceAfterTheRedirect() throws IOException {
        var saved = mvc.post()
                .uri("/p/TIDE/media")
                .param("code", "C-014")
                .param("secret", "long enough for this")
                .param("unit", "1")
                .param("state", "HELD")
                .param("_hired", "on")
                .exchange();
        assertThat(saved).hasStatus3xxRedirection().hasRedirectedUrl("/p/TIDE/media");
        var notice = saved.getMvcResult().getFlashMap().get("notice");
        assertThat(page(
                                "saved",
                                mvc.get()
                                        .uri("/p/TIDE/media")
                                        .flashAttr("notice", notice)
                                        .exchange())
                        .select(".flash")
                        .text())
                .isEqualTo("Card C-014 is in the book.");
    }

    private MvcTestResult mistyped() {
        return mvc.post()
                .uri("/p/TIDE/media")
                .param("capacityGb", "many")
                .param("state", "HELD")
                .param("_hired", "on")
                .exchange();
    }

    private MvcTestResult incomplete() {
        return mvc.post()
                .uri("/p/TIDE/media")
                .param("code", " ")
                .param("capacityGb", "0")
                .param("secret", "short")
                .param("unit", "")
                .param("state", "HELD")
                .param("_hired", "on")
                .param("typed", "A0")
                .exchange();
    }

    private static Document page(String name, MvcTestResult answer) throws IOException {
        assertThat(answer.getResponse().getStatus()).isIn(200, 422);
        String html = answer.getResponse().getContentAsString(StandardCharsets.UTF_8);
        Path file = Path.of("target", "look", name + ".html");
        Files.createDirectories(file.getParent());
        Files.writeString(file, html);
        return Jsoup.parse(html);
    }
}
