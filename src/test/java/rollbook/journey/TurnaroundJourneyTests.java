package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From a production that was just described to a proposal for the office: a day is played, changed, kept. */
class TurnaroundJourneyTests {
    private static final Duration SOON = Duration.ofSeconds(30);

    @TempDir
    Path folder;

    @Test
    void inABrowserAChangedFigureIsAnsweredWithoutPressingAnything() throws Exception {
        try (PortalProcess portal = PortalProcess.start(folder.resolve("data"));
                BrowserVisitor visitor = new BrowserVisitor(portal.base(), 390)) {
            playTheDay(visitor, portal.setupCode());

            visitor.fill("Number of: house model", "3");
            visitor.fill("Length of a take, minutes", "2");
            await().atMost(SOON)
                    .untilAsserted(() -> assertThat(visitor.sentence()).startsWith("With 3 cards no camera waits."));

            keepAndPropose(visitor);
            assertThat(visitor.sidewaysOverflow())
                    .as("the page fits the window")
                    .isZero();
            assertThat(visitor.complaints()).as("complaints of the browser").isEmpty();
        }
    }

    @Test
    void withoutJavaScriptAButtonComputesAgainAndNothingTypedIsLost() throws Exception {
        try (PortalProcess portal = PortalProcess.start(folder.resolve("data"));
                HttpVisitor visitor = new HttpVisitor(portal.base())) {
            playTheDay(visitor, portal.setupCode());

            visitor.fill("Number of: house model", "3");
            visitor.fill("Length of a take, minutes", "long");
            visitor.press("Compute again");
            assertThat(visitor.text()).contains("Length of a take, minutes: Write a number in digits.");

            visitor.fill("Length of a take, minutes", "2");
            visitor.press("Compute again");
            assertThat(visitor.sentence()).startsWith("With 3 cards no camera waits.");

            keepAndPropose(visitor);
        }
    }

    private static void playTheDay(Visitor visitor, String setupCode) {
        WholeLoop loop = new WholeLoop(visitor);
        loop.setUp(setupCode);
        loop.signIn();
        visitor.open("/p/TIDE/turnaround");
        assertThat(visitor.sentence()).isEqualTo("No shooting day lies ahead.");
        loop.describeProduction();
        loop.addFormat();
        loop.enterSchedule();
        loop.registerMedia();

        visitor.open("/p/TIDE/turnaround");
        assertThat(visitor.sentence()).startsWith("With 1 card no camera waits. The last card is proven at ");
        assertThat(visitor.text()).contains("takes and set-ups", "How many cards must float", "What helps most");
    }

    private static void keepAndPropose(Visitor visitor) {
        visitor.fill("Name", "Three cards");
        visitor.press("Save as a scenario");
        assertThat(visitor.text()).contains("2 × house model");
        visitor.press("Propose to order this");
        visitor.open("/p/TIDE/turnaround/proposals");
        assertThat(visitor.sentence()).isEqualTo("One proposal waits for the office.");
        assertThat(visitor.text()).contains("Three cards", "2 × house model");
    }
}
