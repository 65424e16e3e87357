package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A day's work without a mouse: one always sees where one is, and goes on in the order in which one reads. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class KeyboardJourneyTests {
    private static final int MOST_STOPS = 400;

    /**
     * Goes to the next element and tells what is wrong with it: null where it was before, or the rest of the page is
     * done. Bars of a timeline and places at the bottom of a phone stand apart from the column that is read, and cells
     * of a row beside each other.
     */
    private static final String STOP = """
            () => {
              const e = document.activeElement;
              window.stops ??= [];
              if (e === document.body || window.stops.includes(e)) return null;
              const before = window.stops.at(-1);
              window.stops.push(e);
              const wrong = [];
              const style = getComputedStyle(e);
              const outlined = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2;
              if (!outlined && !e.matches('.bar')) wrong.push('nobody sees that the focus is on it');
              const box = e.getClientRects()[0] ?? e.getBoundingClientRect();
              const x = Math.min(Math.max(box.left + box.width / 2, 0), innerWidth - 1);
              const y = Math.min(Math.max(box.top + Math.min(box.height, innerHeight) / 2, 0), innerHeight - 1);
              const there = document.elementFromPoint(x, y);
              if (box.bottom <= 0 || box.top >= innerHeight) wrong.push('it stays out of sight');
              else if (there && !e.contains(there) && !there.contains(e)) wrong.push('it is covered by ' + there.outerHTML.slice(0, 80));
              const apart = (one) => one.closest('.thumbs, .timeline') || one.matches('.skip');
              if (before && !apart(e) && !apart(before)) {
                if (!(before.compareDocumentPosition(e) & Node.DOCUMENT_POSITION_FOLLOWING)) wrong.push('it stands before the one before');
                const top = window.lastTop;
                const row = e.closest('tr');
                if (box.bottom + scrollY <= top && !row?.contains(before)) wrong.push('one goes up to it from ' + before.outerHTML.slice(0, 80));
              }
              window.lastTop = box.top + scrollY;
              return wrong.map(what => e.outerHTML.slice(0, 120) + ': ' + what);
            }
            """;

    private static final String FOCUSED = "document.activeElement.matches('input, select, textarea')"
            + " ? document.activeElement.labels[0].innerText : document.activeElement.innerText";

    private PortalProcess portal;

    @BeforeAll
    void startTheDemo(@TempDir Path folder) throws Exception {
        portal = PortalProcess.start(folder.resolve("data"), "--spring.profiles.active=demo");
    }

    @AfterAll
    void stop() {
        portal.close();
    }

    @Test
    void aCardIsClearedFromSigningInToTheConfirmationByKeysOnly() {
        try (BrowserVisitor visitor = new BrowserVisitor(portal.base(), 1280)) {
            Page page = visitor.page();
            signIn(visitor);
            String card = visitor.sentence().replaceAll("(?s).*may be cleared now: (CARD-\\d+).*", "$1");

            page.keyboard().press("Control+k");
            assertThat(page.evaluate("document.activeElement.id")).isEqualTo("find-code");
            typeAndSend(visitor, card);
            assertThat(visitor.sentence()).contains("may be cleared");

            tabTo(page, "Clear " + card);
            visitor.toNextPage(() -> page.keyboard().press("Enter"));
            tabTo(page, "Type " + card + " to confirm");
            typeAndSend(visitor, "CARD-WRONG");
            assertThat(visitor.text()).contains("That is not the code of this card");
            assertThat(page.evaluate("document.activeElement.id"))
                    .as("what is wrong is read first")
                    .isEqualTo("error-summary");
            tabTo(page, "That is not the code of this card");
            page.keyboard().press("Enter");
            page.keyboard().press("Control+a");
            typeAndSend(visitor, card);
            assertThat(visitor.sentence()).contains("Clear to erase");
        }
    }

    @Test
    void theCodeBoxOffersWhatBeginsSoAndLeadsThereByKeysOnly() {
        try (BrowserVisitor visitor = new BrowserVisitor(portal.base(), 1280)) {
            Page page = visitor.page();
            signIn(visitor);
            page.keyboard().press("Control+k");
            page.keyboard().type("shipm");
            page.waitForSelector("#find-list [role=option]");
            assertThat(page.getAttribute("#find-code", "aria-expanded")).isEqualTo("true");
            page.keyboard().press("Escape");
            assertThat(page.locator("#find-list").count()).isZero();
            assertThat(page.inputValue("#find-code")).as("what was typed stays").isEqualTo("shipm");

            page.keyboard().press("ArrowDown");
            page.waitForSelector("#find-list [role=option]");
            page.keyboard().press("ArrowDown");
            String chosen = page.getAttribute("#find-code", "aria-activedescendant");
            assertThat(page.getAttribute("#" + chosen, "aria-selected")).isEqualTo("true");
            assertThat(new Axe(page).findingsIn("form.find")).isEmpty();
            visitor.toNextPage(() -> page.keyboard().press("Enter"));
            assertThat(page.url()).contains("/shipments");
        }
    }

    @Test
    void aMenuClosesByEscapeAndByGoingOn() {
        try (BrowserVisitor visitor = new BrowserVisitor(portal.base(), 1280)) {
            Page page = visitor.page();
            signIn(visitor);
            page.keyboard().press("Tab");
            page.keyboard().press("Tab");
            page.keyboard().press("Enter");
            assertThat(page.evaluate("document.querySelector('details.menu').open"))
                    .isEqualTo(true);
            page.keyboard().press("Tab");
            page.keyboard().press("Escape");
            assertThat(page.evaluate("document.querySelector('details.menu').open"))
                    .isEqualTo(false);
            assertThat(page.evaluate("document.activeElement.tagName")).isEqualTo("SUMMARY");

            page.keyboard().press("Enter");
            page.keyboard().press("Shift+Tab");
            assertThat(page.evaluate("document.querySelector('details.menu').open"))
                    .isEqualTo(false);
        }
    }

    @Test
    void theFirstKeyLeadsPastWhatIsOnEachPage() {
        try (BrowserVisitor visitor = new BrowserVisitor(portal.base(), 1280)) {
            Page page = visitor.page();
            signIn(visitor);
            page.keyboard().press("Tab");
            assertThat(page.evaluate("document.activeElement.getBoundingClientRect().left >= 0"))
                    .as("the way past can be seen")
                    .isEqualTo(true);
            page.keyboard().press("Enter");
            page.keyboard().press("Tab");
            assertThat(page.evaluate("document.getElementById('main').contains(document.activeElement)"))
                    .isEqualTo(true);
        }
    }

    @Test
    void theKeyOfTheCodeBoxDoesNothingWhileOneWrites() {
        try (BrowserVisitor visitor = new BrowserVisitor(portal.base(), 1280)) {
            Page page = visitor.page();
            signIn(visitor);
            visitor.open("/p/TIDECLERK/clips");
            page.locator("#q").focus();
            page.keyboard().press("Control+k");
            assertThat(page.evaluate("document.activeElement.id")).isEqualTo("q");
        }
    }

    @ParameterizedTest(name = "in a window {0} pixels wide")
    @ValueSource(ints = {1280, 390})
    void oneSeesWhereOneIsAndGoesOnInReadingOrder(int width) {
        List<String> wrong = new ArrayList<>();
        try (BrowserVisitor visitor = new BrowserVisitor(portal.base(), width)) {
            signIn(visitor);
            for (String place : List.of("today", "rolls", "media", "days", "storage", "documents", "turnaround")) {
                visitor.open("/p/TIDECLERK/" + place);
                walk(visitor.page(), place, wrong);
            }
            visitor.find("A014");
            walk(visitor.page(), "a roll", wrong);
        }
        assertThat(wrong).isEmpty();
    }

    private static void walk(Page page, String place, List<String> wrong) {
        int stops = 0;
        while (stops < MOST_STOPS) {
            page.keyboard().press("Tab");
            Object found = page.evaluate(STOP);
            if (found == null) {
                break;
            }
            stops++;
            ((List<?>) found).forEach(what -> wrong.add(place + ": " + what));
        }
        assertThat(stops).as("stops on %s", place).isBetween(5, MOST_STOPS - 1);
    }

    private static void signIn(BrowserVisitor visitor) {
        visitor.open("/sign-in");
        Page page = visitor.page();
        page.keyboard().type("wrangler");
        page.keyboard().press("Tab");
        typeAndSend(visitor, "rollbook-demo");
        assertThat(visitor.address()).endsWith("/today");
    }

    private static void typeAndSend(BrowserVisitor visitor, String text) {
        visitor.page().keyboard().type(text);
        visitor.toNextPage(() -> visitor.page().keyboard().press("Enter"));
    }

    private static void tabTo(Page page, String text) {
        for (int stop = 0; stop < MOST_STOPS; stop++) {
            page.keyboard().press("Tab");
            if (String.valueOf(page.evaluate(FOCUSED)).contains(text)) {
                return;
            }
        }
        throw new AssertionError("no key leads to '" + text + "'");
    }
}
