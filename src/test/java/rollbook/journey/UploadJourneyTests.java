package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Dialog;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A list of some megabytes is sent from a browser whose line fails: it goes on by itself, and after the page was closed too. */
class UploadJourneyTests {
    private static final int LINES = 60_000;
    private static final String ANY_PART = "**/documents/uploads/*";
    /** What a browser does that came to the page without TLS. */
    private static final String WITHOUT_SUBTLE =
            "Object.defineProperty(Crypto.prototype, 'subtle', {get: () => undefined});";

    @TempDir
    Path folder;

    @Test
    void whatWasCutOffGoesOn() throws Exception {
        Path list = list("long.md5", 1);
        try (PortalProcess portal = PortalProcess.start(folder.resolve("data"));
                BrowserVisitor visitor = new BrowserVisitor(portal.base(), 390)) {
            new WholeLoop(visitor).setUp(portal.setupCode());
            new WholeLoop(visitor).signIn();
            Page page = visitor.page();
            page.onDialog(Dialog::accept);

            visitor.goTo("Documents");
            String documents = visitor.address();
            whileTwoPartsAreCutOff(page, () -> send(visitor, list));
            told(page, "long.md5", "Stored, SHA-256");

            page.addInitScript(WITHOUT_SUBTLE);
            page.navigate(documents);
            Path second = list("second.md5", 2);
            Runnable online = stopsAfterTwoParts(page, () -> send(visitor, second));
            assertThat(page.evaluate("typeof sha256"))
                    .as("the library for digests")
                    .isEqualTo("function");
            online.run();
            assertThat(visitor.sentence()).contains("1 file is not all here yet");
            assertThat(new Axe(page).findings())
                    .as("findings beside an unfinished file")
                    .isEmpty();
            visitor.fits();
            AtomicInteger parts = new AtomicInteger();
            page.onRequest(request -> parts.addAndGet(request.method().equals("PATCH") ? 1 : 0));
            page.locator(".go-on input").setInputFiles(second);
            page.waitForURL("**/deliveries/*");
            told(page, "second.md5", "Stored, SHA-256");
            assertThat(parts.get()).as("parts that were sent again or are new").isPositive();

            page.navigate(documents);
            stopsAfterTwoParts(page, () -> send(visitor, listed("third.md5", 3)))
                    .run();
            page.locator(".go-on input").setInputFiles(list);
            assertThat(page.locator(".unfinished .state").innerText()).contains("This is another file");
            visitor.press("Discard third.md5");
            assertThat(page.locator(".unfinished").count()).isZero();
        }
    }

    private static void send(BrowserVisitor visitor, Path list) {
        visitor.attach("Files", List.of(list));
        visitor.page().locator("form.sending button[type=submit]").click();
    }

    private static void told(Page page, String... words) {
        page.waitForURL("**/deliveries/*");
        assertThat(page.locator("main").innerText()).contains(words);
    }

    /** One part never gets there; the answer to the next one never comes back. */
    private static void whileTwoPartsAreCutOff(Page page, Runnable act) {
        AtomicInteger number = new AtomicInteger();
        Consumer<Route> cut = route -> {
            if (!route.request().method().equals("PATCH")) {
                route.resume();
                return;
            }
            switch (number.incrementAndGet()) {
                case 1 -> route.abort("connectionreset");
                case 2 -> {
                    route.fetch();
                    route.abort("connectionreset");
                }
                default -> route.resume();
            }
        };
        page.route(ANY_PART, cut);
        act.run();
        page.waitForURL("**/deliveries/*");
        page.unroute(ANY_PART, cut);
        assertThat(number.get()).as("parts").isGreaterThan(2);
    }

    /** What it returns goes online and loads the page anew, before the page that was there can go on by itself. */
    private static Runnable stopsAfterTwoParts(Page page, Runnable act) {
        BrowserContext context = page.context();
        AtomicInteger number = new AtomicInteger();
        Consumer<Route> cut = route -> {
            int part = number.incrementAndGet();
            if (part == 1) {
                route.resume();
                return;
            }
            if (part == 2) {
                context.setOffline(true);
            }
            route.abort("internetdisconnected");
        };
        page.route(ANY_PART, cut);
        act.run();
        Locator state = page.locator("form.sending .state");
        page.waitForCondition(() -> state.innerText().contains("what has arrived is kept"));
        return () -> {
            context.setOffline(false);
            page.reload();
            page.unroute(ANY_PART, cut);
        };
    }

    private Path listed(String name, int seed) {
        try {
            return list(name, seed);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A checksum list of about 3 MB. */
    private Path list(String name, int seed) throws IOException {
        SplittableRandom random = new SplittableRandom(seed);
        StringBuilder list = new StringBuilder();
        byte[] md5 = new byte[16];
        for (int line = 0; line < LINES; line++) {
            random.nextBytes(md5);
            list.append(HexFormat.of().formatHex(md5)).append("  A001/frame%06d.dpx\n".formatted(line));
        }
        return Files.writeString(folder.resolve(name), list, StandardCharsets.US_ASCII);
    }
}
