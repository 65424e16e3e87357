package rollbook.journey;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.LoadState;
import com.microsoft.playwright.options.SelectOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** A person at a browser window of a given size. Whatever the browser complains about on its console is kept. */
final class BrowserVisitor implements Visitor {
    private static final int HEIGHT = 900;

    private final String base;
    private final Playwright playwright;
    private final Browser browser;
    private final BrowserContext context;
    private final Page page;
    private final List<String> complaints = new ArrayList<>();
    private int loaded;

    BrowserVisitor(String base, int width) {
        this(base, width, true);
    }

    BrowserVisitor(String base, int width, boolean javaScript) {
        this.base = base;
        this.playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        this.browser = playwright
                .chromium()
                .launch(new BrowserType.LaunchOptions()
                        .setExecutablePath(chromium())
                        .setArgs(List.of(
                                "--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking")));
        this.context = browser.newContext(new Browser.NewContextOptions()
                .setViewportSize(width, HEIGHT)
                .setHasTouch(width < 600)
                .setJavaScriptEnabled(javaScript)
                .setLocale("en-GB"));
        this.page = context.newPage();
        page.onConsoleMessage(message -> {
            boolean complaint = message.type().equals("error") || message.type().equals("warning");
            // A form that isn't right yet answers 422 and a refusal 409, which the browser notes though nothing is
            // wrong.
            if (complaint && !message.text().matches("(?s).*status of (409|422).*")) {
                complaints.add(page.url() + ": " + message.text());
            }
        });
        page.onLoad(it -> loaded++);
        page.onPageError(error -> complaints.add(page.url() + ": " + error));
    }

    static Path chromium() {
        for (String folder : System.getenv("PATH").split(java.io.File.pathSeparator)) {
            for (String name : List.of("chromium", "chromium-browser", "google-chrome")) {
                Path program = Path.of(folder, name);
                if (java.nio.file.Files.isExecutable(program)) {
                    return program;
                }
            }
        }
        throw new AssertionError("These tests need Chromium on the PATH; .ci/run installs it");
    }

    Page page() {
        return page;
    }

    List<String> complaints() {
        return complaints;
    }

    /** How far the page can be scrolled sideways, in pixels: more than none is a fault at any width. */
    int sidewaysOverflow() {
        return ((Number) page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth"))
                .intValue();
    }

    String address() {
        return page.url();
    }

    /** Does what leads to another page, or to this one again, and waits until it is there. */
    void toNextPage(Runnable act) {
        int before = loaded;
        act.run();
        page.waitForCondition(() -> loaded > before);
    }

    void screenshot(Path file) {
        page.screenshot(new Page.ScreenshotOptions().setPath(file).setFullPage(true));
    }

    @Override
    public void open(String path) {
        page.navigate(base + path);
    }

    @Override
    public void goTo(String place) {
        Locator links = page.getByRole(
                AriaRole.LINK, new Page.GetByRoleOptions().setName(place).setExact(true));
        Locator visible = links.locator("visible=true");
        if (visible.count() == 0) {
            page.locator("summary").locator("visible=true").last().click();
        }
        visible.first().click();
        page.waitForLoadState(LoadState.LOAD);
    }

    @Override
    public void follow(String text) {
        page.locator("main a")
                .filter(new Locator.FilterOptions().setHasText(exactly(text)))
                .first()
                .click();
        page.waitForLoadState(LoadState.LOAD);
    }

    @Override
    public void fill(String label, String value) {
        field(label).fill(value);
    }

    @Override
    public void choose(String label, String option) {
        Locator select = field(label);
        String value = select.locator("option")
                .filter(new Locator.FilterOptions().setHasText(option))
                .first()
                .getAttribute("value");
        select.selectOption(new SelectOption().setValue(value));
    }

    @Override
    public void tick(String label) {
        field(label).check();
    }

    @Override
    public void attach(String label, List<Path> files) {
        field(label).setInputFiles(files.toArray(Path[]::new));
    }

    @Override
    public void press(String button) {
        page.locator("main button")
                .filter(new Locator.FilterOptions().setHasText(exactly(button)))
                .first()
                .click();
        page.waitForLoadState(LoadState.LOAD);
    }

    @Override
    public void find(String code) {
        Locator box = page.locator("form.find input").locator("visible=true").first();
        box.fill(code);
        box.press("Enter");
        page.waitForLoadState(LoadState.LOAD);
    }

    @Override
    public void reload() {
        page.reload();
    }

    @Override
    public String sentence() {
        return page.locator("#sentence").innerText();
    }

    @Override
    public String text() {
        return page.locator("main").innerText().replaceAll("\\s+", " ");
    }

    @Override
    public void close() {
        context.close();
        browser.close();
        playwright.close();
    }

    /** In the browser's regular expressions, which know no quoting of whole texts. */
    private static Pattern exactly(String text) {
        return Pattern.compile("^\\s*" + text.replaceAll("[.*+?^${}()|\\[\\]\\\\]", "\\\\$0") + "\\s*$");
    }

    private Locator field(String label) {
        return page.locator("main")
                .getByLabel(exactly(label))
                .locator("visible=true")
                .first();
    }
}
