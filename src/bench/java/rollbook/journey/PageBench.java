package rollbook.journey;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import rollbook.Application;
import rollbook.bench.Figures;

/**
 * How heavy each kind of page of the demo is in Chromium on a phone's window, and how long it takes over a slow line: on
 * the first view nothing is in the browser's cache, on the next everything is that may be kept.
 */
final class PageBench {
    private static final double LATENCY_MILLIS = 400;
    private static final double BYTES_PER_SECOND = 400_000 / 8.0;
    private static final double MOST_KILOBYTES = 100;
    private static final int PHONE = 390;

    private final Page page;
    private final CDPSession browser;
    private double bytes;
    private int requests;

    private PageBench(Page page) {
        this.page = page;
        this.browser = page.context().newCDPSession(page);
        browser.send("Network.enable");
        browser.on("Network.loadingFinished", event -> {
            bytes += number(event, "encodedDataLength");
            requests++;
        });
    }

    /** Folder. */
    public static void main(String[] arguments) {
        Path data = Path.of(arguments[0]).resolve("data-" + ProcessHandle.current().pid());
        try (ConfigurableApplicationContext portal = new SpringApplicationBuilder(Application.class)
                .profiles("demo")
                .run(
                        "--rollbook.data=" + data,
                        "--server.port=0",
                        "--spring.main.banner-mode=off",
                        "--logging.level.root=error")) {
            String base = "http://localhost:" + portal.getEnvironment().getRequiredProperty("local.server.port");
            measure(base);
        }
    }

    private static void measure(String base) {
        List<String> addresses;
        try (HttpVisitor walker = new HttpVisitor(base)) {
            signIn(walker);
            addresses = new SiteMap().walk(walker, "/", "/");
        }
        List<Double> first = new ArrayList<>();
        List<Double> next = new ArrayList<>();
        List<Double> kilobytes = new ArrayList<>();
        try (BrowserVisitor visitor = new BrowserVisitor(base, PHONE)) {
            signIn(visitor);
            PageBench bench = new PageBench(visitor.page());
            Set<String> done = new HashSet<>();
            for (String address : addresses) {
                String pattern = SiteMap.pattern(address);
                if (done.add(pattern)) {
                    bench.fresh();
                    double seconds = bench.open(base + address);
                    kilobytes.add(bench.bytes / 1000);
                    first.add(seconds);
                    Figures.atMost(pattern + ", first view", bench.bytes / 1000, "kB", MOST_KILOBYTES, "");
                    Figures.print(pattern + ", first view", bench.requests, "requests");
                    Figures.print(pattern + ", first view", seconds, "s");
                    next.add(bench.open(base + address));
                    Figures.print(pattern + ", next view", bench.bytes / 1000, "kB");
                    Figures.print(pattern + ", next view", next.get(next.size() - 1), "s");
                }
            }
        }
        summary("first view", kilobytes, "kB");
        summary("first view", first, "s");
        summary("next view", next, "s");
    }

    private static void summary(String what, List<Double> values, String unit) {
        double[] all = values.stream().mapToDouble(Double::doubleValue).toArray();
        Figures.print("median of " + all.length + " pages, " + what, Figures.median(all), unit);
        Figures.print(
                "most of " + all.length + " pages, " + what,
                values.stream().max(Double::compare).orElseThrow(),
                unit);
    }

    private static void signIn(Visitor visitor) {
        visitor.open("/sign-in");
        visitor.fill("Sign-in name", "administrator");
        visitor.fill("Password", "rollbook-demo");
        visitor.press("Sign in");
    }

    private void fresh() {
        page.navigate("about:blank");
        browser.send("Network.clearBrowserCache");
    }

    /** Seconds until the page and all that belongs to it are there. */
    private double open(String address) {
        page.navigate("about:blank");
        slow(LATENCY_MILLIS, BYTES_PER_SECOND);
        bytes = 0;
        requests = 0;
        page.navigate(address);
        return ((Number) page.evaluate("performance.getEntriesByType('navigation')[0].duration")).doubleValue() / 1000;
    }

    private void slow(double latencyMillis, double bytesPerSecond) {
        JsonObject conditions = new JsonObject();
        conditions.addProperty("offline", false);
        conditions.addProperty("latency", latencyMillis);
        conditions.addProperty("downloadThroughput", bytesPerSecond);
        conditions.addProperty("uploadThroughput", bytesPerSecond);
        browser.send("Network.emulateNetworkConditions", conditions);
    }

    private static double number(JsonObject event, String name) {
        JsonElement value = event.get(name);
        return value == null ? 0 : value.getAsDouble();
    }
}
