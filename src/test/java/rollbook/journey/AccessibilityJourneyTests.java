package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every kind of page of the demo, and every state of it that somebody gets to see, by the rules of axe-core: in light and
 * dark colours, on a wide window and on a phone's. Each page has a language, a title and one main heading, and none has to
 * be moved sideways where it is 320 pixels wide.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class AccessibilityJourneyTests {
    private static final String PASSWORD = "rollbook-demo";
    private static final String DEMO = "/p/TIDECLERK";
    private static final String LIVING_PAGE = DEMO + "/components";
    private static final int WIDE = 1280;
    private static final int PHONE = 390;
    private static final int NARROWEST = 320;
    private static final int HEIGHT = 900;

    /** At once: a gate has two processors. */
    private static final int BROWSERS = 2;

    /** Whose pages others see too goes first, so that each is looked at as the one who can do most on it. */
    private static final String FIRST = "administrator";

    /** Takes away what is written in each form, and writes words where figures belong. */
    private static final String SEND_NONSENSE = "(at) => {"
            + " const form = document.querySelectorAll('" + SiteMap.FORM + "')[at];"
            + " for (const field of form.querySelectorAll('input, textarea')) {"
            + "  if (field.matches('.number, .decimal')) field.value = 'many';"
            + "  else if (field.matches('textarea, [type=text], [type=search], [type=date], [type=time], [type=email],"
            + " [type=password], input:not([type])')) field.value = ''; }"
            + " HTMLFormElement.prototype.submit.call(form); }";

    private final SiteMap siteMap = new SiteMap();
    private final List<String> findings = Collections.synchronizedList(new ArrayList<>());
    private final ExecutorService browsers = Executors.newFixedThreadPool(BROWSERS);
    private PortalProcess portal;

    @BeforeAll
    void startTheDemo(@TempDir Path folder) throws Exception {
        portal = PortalProcess.start(folder.resolve("data"), "--spring.profiles.active=demo");
    }

    @BeforeEach
    void forget() {
        findings.clear();
    }

    @AfterAll
    void stop() {
        browsers.shutdown();
        portal.close();
    }

    @Order(1)
    @ParameterizedTest
    @ValueSource(strings = {FIRST, "wrangler", "office", "post", "reader"})
    void nothingIsWrongWithThePagesThatARoleIsLedTo(String name) {
        List<String> pages = worthALook(name, "/", "/");
        lookAt(name, pages);
        assertThat(findings).as("as %s, of %d pages", name, pages.size()).isEmpty();
        assertThat(siteMap.patterns()).as("the walk gets about").hasSizeGreaterThan(50);
    }

    @Order(2)
    @Test
    void norWithSigningIn() {
        try (BrowserVisitor visitor = new BrowserVisitor(portal.base(), WIDE)) {
            visitor.open("/sign-in");
            look(visitor.page(), "sign-in");
            visitor.open("/sign-in?signed-out");
            look(visitor.page(), "signed out");
            visitor.fill("Sign-in name", "wrangler");
            visitor.fill("Password", "wrong");
            visitor.press("Sign in");
            assertThat(visitor.text()).contains("Sign-in name");
            look(visitor.page(), "sign-in failed");
        }
        assertThat(findings).isEmpty();
    }

    @Order(3)
    @Test
    void norWithAProductionInWhichNothingIsYet() {
        try (BrowserVisitor visitor = signedIn(FIRST)) {
            visitor.open("/productions/new");
            visitor.fill("Production code", "EMPTY");
            visitor.fill("Production name", "Nothing yet");
            visitor.choose("Time zone", "Europe/Lisbon");
            visitor.fill("Currency", "EUR");
            visitor.press("Make the production");
        }
        List<String> pages = worthALook(FIRST, "/p/EMPTY/today", "/p/EMPTY");
        assertThat(pages).as("pages that look different while empty").hasSizeGreaterThan(5);
        lookAt(FIRST, pages);
        assertThat(findings).isEmpty();
    }

    @Order(4)
    @Test
    void norWithMenusThatAreOpen() {
        try (BrowserVisitor visitor = signedIn(FIRST)) {
            Page page = visitor.page();
            visitor.open(DEMO + "/today");
            page.locator("summary:visible").first().click();
            note("open menu", new Axe(page).findingsIn(".menu[open]"));
            page.keyboard().press("Escape");
            page.setViewportSize(PHONE, HEIGHT);
            page.locator("summary:visible").last().click();
            note("open menu below", new Axe(page).findingsIn(".more[open]"));
        }
        assertThat(findings).isEmpty();
    }

    @Order(5)
    @Test
    void norWithPagesThatSayThatSomethingWentWrong() {
        try (BrowserVisitor visitor = signedIn("reader")) {
            for (String path : List.of(
                    "/nowhere",
                    DEMO + "/rolls/00000000-0000-0000-0000-000000000000",
                    DEMO + "/find?code=NOWHERE",
                    DEMO + "/settings/units/new",
                    LIVING_PAGE + "/status/409",
                    LIVING_PAGE + "/status/413",
                    LIVING_PAGE + "/status/500")) {
                visitor.open(path);
                look(visitor.page(), path);
            }
        }
        assertThat(findings).isEmpty();
    }

    /** Everything in each of its states; then once more with the notice of what was just done. */
    @Order(6)
    @Test
    void norWithWhatPagesAreMadeOf() {
        worthALook(FIRST, LIVING_PAGE, LIVING_PAGE);
        try (BrowserVisitor visitor = signedIn(FIRST)) {
            visitor.open(LIVING_PAGE);
            look(visitor.page(), "living page");
            visitor.fill("Password", PASSWORD);
            visitor.fill("Note", "nothing");
            visitor.press("Check the form");
            assertThat(visitor.page().locator("#flash").innerText()).contains("is right");
            look(visitor.page(), "notice");
        }
        assertThat(findings).isEmpty();
    }

    /** What a person sees who sends a form that somebody else was quicker with. */
    @Order(7)
    @Test
    void norWithAFormThatSomebodyElseWasQuickerWith() {
        try (BrowserVisitor visitor = signedIn(FIRST)) {
            visitor.open(DEMO + "/media");
            visitor.page().locator("main tbody th a").first().click();
            visitor.page().locator("main a[href$='/edit']").first().click();
            visitor.page().evaluate("document.querySelector('main input[name=version]').value = '-1'");
            visitor.page().locator("main form button.primary").click();
            visitor.page().waitForLoadState();
            assertThat(visitor.text()).containsIgnoringCase("meanwhile");
            look(visitor.page(), "a form that somebody else was quicker with");
        }
        assertThat(findings).isEmpty();
    }

    /** Last, for some forms take even this. */
    @Order(9)
    @Test
    void norWithAFormThatIsNotRightYet() {
        if (siteMap.pagesWithForms().isEmpty()) {
            worthALook(FIRST, "/", "/");
        }
        Set<String> answered = ConcurrentHashMap.newKeySet();
        inAllBrowsers(FIRST, siteMap.pagesWithForms(), (visitor, address) -> {
            visitor.open(address);
            // Counted each time: a form that was taken may be gone.
            for (int at = 0; at < forms(visitor.page()); at++) {
                sendNonsense(visitor, at)
                        .filter(answered::add)
                        .ifPresent(form -> look(visitor.page(), "wrong form " + form));
                visitor.open(address);
            }
        });
        assertThat(findings).as("of %d forms", answered.size()).isEmpty();
        assertThat(answered).as("forms that are refused").hasSizeGreaterThan(20);
    }

    private static int forms(Page page) {
        return page.locator(SiteMap.FORM).count();
    }

    /** Where the form was sent to, without ids, if it was refused and the page says what is wrong. */
    private static Optional<String> sendNonsense(BrowserVisitor visitor, int at) {
        Response[] answer = new Response[1];
        visitor.toNextPage(() -> answer[0] = visitor.page()
                .waitForResponse(
                        response -> response.request().method().equals("POST"),
                        () -> visitor.page().evaluate(SEND_NONSENSE, at)));
        return answer[0].status() == 422 ? Optional.of(SiteMap.pattern(answer[0].url())) : Optional.empty();
    }

    private List<String> worthALook(String name, String start, String within) {
        try (HttpVisitor walker = signedInWithoutJavaScript(name)) {
            return siteMap.walk(walker, start, within);
        }
    }

    private void lookAt(String name, List<String> pages) {
        inAllBrowsers(name, pages, (visitor, address) -> {
            visitor.open(address);
            look(visitor.page(), address);
            findings.addAll(visitor.complaints());
            visitor.complaints().clear();
        });
    }

    /** Opens the person's browsers and gives each address to the first that is free. */
    private void inAllBrowsers(String name, Collection<String> addresses, BiConsumer<BrowserVisitor, String> act) {
        Queue<String> ahead = new ConcurrentLinkedQueue<>(addresses);
        Runnable browser = () -> {
            try (BrowserVisitor visitor = signedIn(name)) {
                for (String address = ahead.poll(); address != null; address = ahead.poll()) {
                    act.accept(visitor, address);
                }
            }
        };
        CompletableFuture.allOf(Stream.generate(() -> CompletableFuture.runAsync(browser, browsers))
                        .limit(Math.min(BROWSERS, addresses.size()))
                        .toArray(CompletableFuture[]::new))
                .join();
    }

    private void look(Page page, String state) {
        Axe axe = new Axe(page);
        note(state + " wide, light", axe.findings());
        colours(page, ColorScheme.DARK);
        note(state + " wide, dark", axe.findings());
        page.setViewportSize(PHONE, HEIGHT);
        page.evaluate("document.querySelectorAll('main details').forEach(details => details.open = true)");
        note(state + " phone, dark", axe.findings());
        colours(page, ColorScheme.LIGHT);
        note(state + " phone, light", axe.findings());
        page.setViewportSize(NARROWEST, HEIGHT);
        note(state, axe.shapeFindings());
        page.setViewportSize(WIDE, HEIGHT);
    }

    private static void colours(Page page, ColorScheme scheme) {
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
    }

    private void note(String state, List<String> these) {
        these.forEach(finding -> findings.add(state + ": " + finding));
    }

    private BrowserVisitor signedIn(String name) {
        BrowserVisitor visitor = new BrowserVisitor(portal.base(), WIDE);
        signIn(visitor, name);
        return visitor;
    }

    private HttpVisitor signedInWithoutJavaScript(String name) {
        HttpVisitor visitor = new HttpVisitor(portal.base());
        signIn(visitor, name);
        return visitor;
    }

    private static void signIn(Visitor visitor, String name) {
        visitor.open("/sign-in");
        visitor.fill("Sign-in name", name);
        visitor.fill("Password", PASSWORD);
        visitor.press("Sign in");
    }
}
