package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.JSHandle;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** How often each role has to tap for what it does every day, from signing in to the answer. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DailyWorkJourneyTests {
    private static final int PHONE = 390;

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
    void whetherTheCardInTheHandMayGoBackIsAnsweredAfterTwoTapsAndClearedAfterThreeMore() {
        try (Hand hand = new Hand("wrangler", PHONE)) {
            assertThat(hand.sentence()).as("for the newest cards: no tap").contains("may be cleared now: CARD-");
            String card = hand.sentence().replaceAll("(?s).*may be cleared now: (CARD-\\d+).*", "$1");

            hand.tap(hand.page().locator("#find-code"));
            hand.page().keyboard().type(card.toLowerCase(Locale.ROOT));
            hand.follow(hand.page().locator("form.find button"));
            assertThat(hand.sentence()).contains("may be cleared");
            assertThat(hand.taps()).as("to the answer").isEqualTo(2);

            hand.follow(hand.link("Clear " + card));
            hand.tap(hand.page().locator("main form input.code"));
            hand.page().keyboard().type(card);
            hand.follow(hand.page().locator("main form button.primary"));
            assertThat(hand.sentence()).contains("Clear to erase");
            assertThat(hand.taps()).as("to the card that is cleared").isEqualTo(5);
        }
    }

    @Test
    void theDaysDocumentsAreSentByDroppingThem() {
        try (Hand hand = new Hand("wrangler", 1280)) {
            hand.tap(hand.page().locator("summary").first());
            hand.follow(hand.link("Documents"));
            JSHandle files = hand.page()
                    .evaluateHandle("() => { const these = new DataTransfer();"
                            + " for (const name of ['A', 'B', 'C'])"
                            + " these.items.add(new File(['d41d8cd98f00b204e9800998ecf8427e  ' + name + '.mov'],"
                            + " name + '.md5'));"
                            + " return these; }");
            hand.page().locator("form.sending").dispatchEvent("drop", Map.of("dataTransfer", files));
            hand.page().waitForURL("**/documents/deliveries/*");
            assertThat(hand.text()).contains("A.md5", "B.md5", "C.md5");
            assertThat(hand.taps()).as("before the drop").isEqualTo(2);
        }
    }

    @Test
    void whenStorageRunsOutIsWhatPostReadsFirst() {
        try (Hand hand = new Hand("post", PHONE)) {
            assertThat(hand.sentence()).containsPattern("likely full on|last to the end of the show");
            assertThat(hand.taps()).isZero();
        }
    }

    @Test
    void anOrderIsProposedTwoTapsFromItsFlag() {
        try (Hand hand = new Hand("office", PHONE)) {
            hand.follow(hand.page().locator("nav.thumbs a").filter(new Locator.FilterOptions().setHasText("Storage")));
            assertThat(hand.text()).contains("Propose an order");
            hand.follow(hand.link("Propose an order"));
            hand.follow(hand.page().locator("main form button.primary"));
            assertThat(hand.sentence()).contains("It waits for approval.");
            assertThat(hand.taps()).as("with the one that leads to the flag").isEqualTo(3);
        }
    }

    /** Somebody who has just signed in, and taps. */
    private final class Hand implements AutoCloseable {
        private final BrowserVisitor visitor;
        private int taps;

        Hand(String name, int width) {
            visitor = new BrowserVisitor(portal.base(), width);
            visitor.open("/sign-in");
            visitor.fill("Sign-in name", name);
            visitor.fill("Password", "rollbook-demo");
            visitor.press("Sign in");
        }

        Page page() {
            return visitor.page();
        }

        Locator link(String text) {
            return page().locator("a:visible")
                    .filter(new Locator.FilterOptions().setHasText(text))
                    .first();
        }

        void tap(Locator what) {
            taps++;
            what.click();
        }

        /** Taps what leads to another page. */
        void follow(Locator what) {
            visitor.toNextPage(() -> tap(what));
        }

        String sentence() {
            return visitor.sentence();
        }

        String text() {
            return visitor.text();
        }

        int taps() {
            return taps;
        }

        @Override
        public void close() {
            visitor.close();
        }
    }
}
