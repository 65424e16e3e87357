package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** What stays of a page while it is made like its newer version, in Chromium and without a portal. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class MorphJourneyTests {
    private BrowserVisitor visitor;
    private Page page;

    @BeforeAll
    void openABrowser() {
        visitor = new BrowserVisitor("", 1280);
        page = visitor.page();
    }

    @AfterAll
    void closeIt() {
        visitor.close();
    }

    @BeforeEach
    void load() {
        page.setContent("<body><main></main></body>");
        page.addScriptTag(new Page.AddScriptTagOptions().setPath(Path.of("src/main/resources/static/js/morph.js")));
    }

    @Test
    void whateverItWasItBecomesLikeTheNewerVersion() {
        show(
                "<h1>Rolls</h1><p class='a'>One</p><table><tr><th>A001</th><td>held</td></tr></table><svg><path d='M0 0'/></svg>");
        String newer = "<h1>Rolls</h1><section><h2>New</h2></section><p>Two <b>bold</b></p>"
                + "<table><tr><th>A002</th><td>copying</td></tr><tr><th>A001</th><td>cleared</td></tr></table>"
                + "<svg><path d='M1 1' class='line'/><path d='M2 2'/></svg>";
        morph(newer);
        assertThat(page.innerHTML("main")).isEqualTo(normal(newer));
    }

    @Test
    void whoStandsOnALinkStandsOnTheSameLinkThoughRowsCameAboveIt() {
        show("<table><tr><td><a href='#b'>B</a></td></tr><tr><td><a href='#c'>C</a></td></tr></table>");
        page.focus("a[href='#c']");
        morph("<table><tr><td><a href='#c'>C</a></td><td>now first</td></tr><tr><td><a href='#a'>A</a></td></tr>"
                + "<tr><td><a href='#b'>B</a></td></tr></table>");
        assertThat(page.evaluate("document.activeElement.getAttribute('href')")).isEqualTo("#c");
        assertThat(page.locator("td").allInnerTexts()).containsExactly("C", "now first", "A", "B");
    }

    @Test
    void aLinkIsNeverTurnedIntoAnotherUnderSomebodysHand() {
        show("<p><a href='#clear-a'>Clear A</a></p>");
        page.focus("a");
        morph("<p><a href='#clear-b'>Clear B</a></p>");
        assertThat(page.evaluate("document.activeElement.localName")).isEqualTo("body");
    }

    @Test
    void whatIsFoldedOpenStaysOpen() {
        show("<details><summary>3 lines</summary><p>one</p></details>");
        page.click("summary");
        morph("<details><summary>4 lines</summary><p>two</p></details>");
        assertThat(page.locator("details[open] p").innerText()).isEqualTo("two");
    }

    @Test
    void whatSomebodyTypesStaysThoughTheRestChanges() {
        show("<form method='get'><input name='text'></form><p>old</p>");
        page.fill("input", "CARD-0");
        morph("<form method='get'><input name='text' value='other'></form><p>new</p>");
        assertThat(page.inputValue("input")).isEqualTo("CARD-0");
        assertThat(page.innerText("p")).isEqualTo("new");
    }

    @Test
    void aFormThatNobodyBeganFollowsAndSoDoesItsToken() {
        String form = "<form method='post' action='/a'><input type='hidden' name='_csrf' value='%s'>"
                + "<input name='text' value='%s'><select name='s'><option>1</option><option %s>2</option></select>"
                + "<input type='checkbox' name='c' %s></form>";
        show(form.formatted("one", "old", "", ""));
        // Somebody wrote something and took it back: the field doesn't follow its attribute by itself any more.
        page.fill("[name=text]", "typed");
        page.fill("[name=text]", "old");
        page.evaluate("document.activeElement.blur()");
        morph(form.formatted("two", "new", "selected", "checked"));
        assertThat(page.inputValue("[name=text]")).isEqualTo("new");
        assertThat(page.inputValue("[name=s]")).isEqualTo("2");
        assertThat(page.isChecked("[name=c]")).isTrue();
        assertThat(page.inputValue("[name=_csrf]")).isEqualTo("two");
    }

    @Test
    void aFormThatSomebodyBeganKeepsAllButItsToken() {
        String form = "<form method='post' action='/a'><input type='hidden' name='_csrf' value='%s'>"
                + "<input type='hidden' name='version' value='%s'><textarea name='note'></textarea></form>";
        show(form.formatted("one", "1"));
        page.fill("textarea", "half a sentence");
        morph(form.formatted("two", "2"));
        assertThat(page.inputValue("textarea")).isEqualTo("half a sentence");
        assertThat(page.inputValue("[name=version]"))
                .as("what the form was begun on, so that the server sees it is out of date")
                .isEqualTo("1");
        assertThat(page.inputValue("[name=_csrf]")).isEqualTo("two");
    }

    @Test
    void whatAScriptDrawsIsLeftAlone() {
        show("<ul data-keep><li>drawn</li></ul>");
        morph("<ul data-keep hidden></ul>");
        assertThat(page.locator("ul:visible").innerText()).isEqualTo("drawn");
    }

    private void show(String html) {
        page.evaluate("html => document.querySelector('main').innerHTML = html", html);
    }

    private void morph(String html) {
        page.evaluate(
                "html => morph(document.querySelector('main'),"
                        + " new DOMParser().parseFromString('<main>' + html + '</main>', 'text/html').querySelector('main'))",
                html);
    }

    /** As the browser writes it. */
    private String normal(String html) {
        return (String) page.evaluate(
                "html => new DOMParser().parseFromString('<main>' + html + '</main>', 'text/html').querySelector('main').innerHTML",
                html);
    }
}
