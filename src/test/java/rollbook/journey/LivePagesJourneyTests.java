package rollbook.journey;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.Sizes;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** Pages that stay open show what others do, and say when they can't. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LivePagesJourneyTests {
    private static final String HOME = "/p/TIDECLERK/";
    /** Often enough that nobody waits for it here. */
    private static final String EVERY = "--rollbook.refresh-every=300ms";

    /** Of conditions that the page meets by itself, on a machine with other work too. */
    private static final double PATIENCE_MILLIS = 30_000;

    private PortalProcess portal;
    private BrowserVisitor visitor;
    private HttpVisitor other;

    @BeforeAll
    void startTheDemo(@TempDir Path folder) throws Exception {
        PlaywrightAssertions.setDefaultAssertionTimeout(PATIENCE_MILLIS);
        portal = PortalProcess.start(folder.resolve("data"), "--spring.profiles.active=demo", EVERY);
        visitor = new BrowserVisitor(portal.base(), 1280);
        signIn(visitor);
        other = new HttpVisitor(portal.base());
        signIn(other);
    }

    @AfterAll
    void stop() {
        visitor.close();
        portal.close();
    }

    @Test
    void whatAnotherPersonDoesIsShownOnEveryOpenPageWhereTheReaderIs() {
        String card = visitor.sentence().replaceAll("(?s).*may be cleared now: (CARD-\\d+).*", "$1");
        Page today = open("today");
        Page media = open("media");
        Page wall = open("wall");
        today.evaluate("document.getElementById('main').mine = true");
        today.locator("main a").last().focus();
        Object seenAt = today.evaluate("document.activeElement.getBoundingClientRect().top");
        Object focused = today.evaluate("document.activeElement.href");
        media.selectOption("#filter-kind", "CARD");

        other.open(HOME + "today");
        other.find(card);
        other.follow("Clear " + card);
        other.fill("Type " + card + " to confirm", card);
        other.press("Clear " + card);

        assertThat(today.locator("#sentence")).containsText("2 cards are cleared and may be erased.");
        assertThat(today.evaluate("document.getElementById('main').mine"))
                .as("it was not loaded anew")
                .isEqualTo(true);
        assertThat(today.evaluate("document.activeElement.href")).isEqualTo(focused);
        assertThat(today.evaluate("document.activeElement.getBoundingClientRect().top"))
                .as("where it is in the window, though there is less above it")
                .isEqualTo(seenAt);
        assertThat(today.locator("#live-says"))
                .hasText(today.locator("#sentence").innerText());
        assertThat(wall.locator("#wall-erase")).containsText(card);
        assertThat(wall.locator("#live-says")).containsText("2 cards are cleared");
        assertThat(media.locator("tr").filter(new Locator.FilterOptions().setHasText(card)))
                .containsText("clear to erase");
        assertThat(media.locator("#filter-kind")).hasValue("CARD");
        List.of(today, media, wall).forEach(Page::close);
    }

    @Test
    void aFormThatSomebodyFillsHoldsThePageBackAndSaysSo(@TempDir Path folder) throws Exception {
        Path mine = Files.writeString(folder.resolve("mine.md5"), "d41d8cd98f00b204e9800998ecf8427e  a.mov\n");
        Path theirs = Files.writeString(folder.resolve("theirs.md5"), "d41d8cd98f00b204e9800998ecf8427e  b.mov\n");
        Page documents = open("documents");
        documents.locator("main input[type=file]").setInputFiles(mine);

        other.open(HOME + "documents");
        other.attach("Files", List.of(theirs));
        other.press("Send");

        assertThat(documents.locator("#live")).hasText("Something changed here. Reload when you are done.");
        assertThat(documents.locator("#documents")).not().containsText("theirs.md5");

        documents.locator("main input[type=file]").setInputFiles(new Path[0]);
        assertThat(documents.locator("#documents")).containsText("theirs.md5");
        assertThat(documents.locator("#live")).isEmpty();
        documents.close();
    }

    @Test
    void aPageThatIsOfflineSaysSinceWhenAndRecovers() {
        Page wall = open("wall");
        String asOf = wall.locator("[data-made-at]").innerText();
        wall.context().setOffline(true);
        assertThat(wall.locator("#live")).containsText("Offline since");
        assertThat(wall.locator("#live")).containsText("What you see may be out of date.");
        assertThat(asOf).matches("\\d\\d:\\d\\d");
        assertThat(wall.locator("body")).hasAttribute("data-live", "late");
        wall.context().setOffline(false);
        assertThat(wall.locator("#live")).isEmpty();
        assertThat(wall.locator("body")).hasAttribute("data-live", "current");
        wall.close();
    }

    @Test
    void aServerThatFailsIsAskedAgainUntilItAnswers() {
        Page today = open("today");
        AtomicInteger failures = new AtomicInteger();
        today.route("**" + HOME + "today", route -> {
            if (failures.incrementAndGet() <= 2) {
                route.fulfill(new Route.FulfillOptions().setStatus(503));
            } else {
                route.resume();
            }
        });
        assertThat(today.locator("#live")).containsText("No answer since");
        assertThat(today.locator("#live")).isEmpty();
        assertThat(failures.get()).isGreaterThan(2);
        today.close();
    }

    @Test
    void anotherVersionOfThePortalAsksToBeLoaded() {
        Page today = open("today");
        today.route("**" + HOME + "today", route -> {
            if (route.request().isNavigationRequest()) {
                route.resume();
                return;
            }
            route.fulfill(new Route.FulfillOptions()
                    .setContentType("text/html")
                    .setBody("<link rel=stylesheet href=/css/newer.css><div id=live data-fingerprint=newer></div>"
                            + "<main id=main></main>"));
        });
        assertThat(today.locator("#live")).hasText("Rollbook was renewed.Reload");
        assertThat(today.locator("main")).containsText("May I hand this card back?");
        today.close();
    }

    @Test
    void whoIsSignedOutSignsInAndComesBackHere() {
        try (BrowserVisitor leaving = new BrowserVisitor(portal.base(), 390)) {
            signIn(leaving);
            leaving.open(HOME + "media?kind=CARD");
            Page media = leaving.page();
            Page elsewhere = media.context().newPage();
            elsewhere.navigate(portal.base() + HOME + "today");
            elsewhere.locator("form[action='/sign-out'] button").first().evaluate("button => button.click()");
            elsewhere.waitForURL("**/sign-in?signed-out");
            assertThat(media.locator("#live")).containsText("Signed out.");
            media.locator("#live a").click();
            leaving.fill("Sign-in name", "wrangler");
            leaving.fill("Password", "rollbook-demo");
            leaving.press("Sign in");
            assertThat(leaving.address()).endsWith(HOME + "media?kind=CARD");
        }
    }

    @Test
    void askingForAPageThatIsTheSameCostsLessThanAKilobyte() {
        Page today = open("today");
        Sizes sizes = today.waitForResponse(answer -> answer.status() == 304, () -> {})
                .request()
                .sizes();
        assertThat(sizes.requestHeadersSize).as("question").isBetween(100, 1000);
        assertThat(sizes.responseHeadersSize + sizes.responseBodySize)
                .as("answer")
                .isBetween(100, 1000);
        today.close();
    }

    @Test
    void withoutScriptsAPageSaysWhenItWasMadeAndStaysAsItIs() {
        try (BrowserVisitor plain = new BrowserVisitor(portal.base(), 390, false)) {
            signIn(plain);
            for (String path : List.of("today", "wall")) {
                plain.open(HOME + path);
                assertThat(plain.page().locator(".made-at").innerText()).matches("As of\\s+\\d\\d:\\d\\d");
                assertThat(plain.page().locator("#live").innerText()).isEmpty();
                plain.fits();
            }
            plain.page().locator(".wall-head a").click();
            assertThat(plain.address()).endsWith(HOME + "today");
        }
    }

    private Page open(String path) {
        Page page = visitor.page().context().newPage();
        page.navigate(portal.base() + HOME + path);
        return page;
    }

    private static void signIn(Visitor person) {
        person.open("/sign-in");
        person.fill("Sign-in name", "wrangler");
        person.fill("Password", "rollbook-demo");
        person.press("Sign in");
    }
}
