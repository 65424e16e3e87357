package rollbook.journey;

import com.microsoft.playwright.Page;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** What is wrong with the page that a browser shows: by axe-core, which knows the rules of WCAG, and by its shape. */
final class Axe {
    private static final String SCRIPT = script();

    /** Rules of WCAG 2.0 to 2.2, levels A and AA, and what axe-core's makers hold for good practice besides. */
    private static final Map<String, Object> ALL = Map.of(
            "runOnly",
            Map.of(
                    "type",
                    "tag",
                    "values",
                    List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice")),
            "rules",
            Map.of("target-size", Map.of("enabled", true)));

    /**
     * Text that doesn't stand out from its ground, WCAG's criterion 1.4.3, by the computed colours: axe-core doesn't look at
     * text in drawings. Pages here have plain grounds.
     */
    private static final String WEAK_TEXT = "() => {"
            + " const parts = colour => colour.match(/[\\d.]+/g).map(Number);"
            + " const linear = c => (c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;"
            + " const luminance = ([r, g, b]) => 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);"
            + " const over = (top, below) => top.slice(0, 3).map((c, i) => c * (top[3] ?? 1) + below[i] * (1 - (top[3] ?? 1)));"
            + " const ground = e => { const own = parts(getComputedStyle(e).backgroundColor);"
            + "  return own[3] === 0 ? (e.parentElement ? ground(e.parentElement) : [255, 255, 255])"
            + "   : own[3] === undefined ? own : over(own, ground(e.parentElement)); };"
            + " const weak = new Set();"
            + " for (const e of document.querySelectorAll('body *')) {"
            + "  if (![...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()) || !e.checkVisibility()"
            + "   || e.closest('option, title, desc, :disabled')) continue;"
            + "  const style = getComputedStyle(e);"
            + "  const under = ground(e);"
            + "  const text = over(parts(e.closest('svg') ? style.fill : style.color), under);"
            + "  const [a, b] = [luminance(text), luminance(under)].sort((x, y) => y - x);"
            + "  const size = parseFloat(style.fontSize);"
            + "  const large = size >= 24 || size >= 18.66 && style.fontWeight >= 700;"
            + "  if ((a + 0.05) / (b + 0.05) < (large ? 3 : 4.5))"
            + "   weak.add('contrast ' + ((a + 0.05) / (b + 0.05)).toFixed(2) + ' of ' + e.outerHTML.slice(0, 120)); }"
            + " return [...weak]; }";

    private static final String RUN = "async ([part, rules]) => {"
            + " const found = await axe.run(part,"
            + " {...rules, resultTypes: ['violations'], preload: false, iframes: false});"
            + " return found.violations.flatMap(rule => rule.nodes.map(node =>"
            + " rule.id + ' (' + rule.help + ') at ' + node.target.join(' ') + ': ' + node.html.slice(0, 200))); }";

    /** Names what sticks out, unless it moves in a box of its own. */
    private static final String STICKING_OUT = "[...document.querySelectorAll('body *')]"
            + ".filter(e => e.getBoundingClientRect().right > innerWidth + 1 && !e.closest('.scroll, .chart, .timeline'))"
            + ".map(e => e.tagName.toLowerCase() + '.' + e.className).slice(0, 3).join(', ')";

    private final Page page;

    /** Of the page as it is now; another page needs another one. */
    Axe(Page page) {
        this.page = page;
        page.evaluate(SCRIPT);
    }

    /** What breaks any rule, and what can't be read: the rule and the element, a line each. */
    List<String> findings() {
        List<String> all = new ArrayList<>(findingsIn("html"));
        all.addAll(strings(page.evaluate(WEAK_TEXT)));
        return all;
    }

    /** What breaks a rule in a part that covers others, which nobody can use until it is closed. */
    List<String> findingsIn(String selector) {
        return run(selector, ALL);
    }

    /** Whether it has a language, a title, one main heading and one primary action at most, and fits its window. */
    List<String> shapeFindings() {
        List<String> findings = new ArrayList<>();
        number("document.querySelectorAll('h1').length", 1, "main headings", findings);
        number("Number(document.documentElement.lang !== '')", 1, "language", findings);
        number("Number(document.title !== '')", 1, "title", findings);
        Object primaries = page.evaluate("document.querySelectorAll('main .primary').length");
        if (((Number) primaries).intValue() > 1) {
            findings.add("has more than one primary action");
        }
        Object over = page.evaluate("document.documentElement.scrollWidth - innerWidth");
        if (((Number) over).intValue() > 0) {
            findings.add("is " + over + " pixels wider than its window: " + page.evaluate(STICKING_OUT));
        }
        return findings;
    }

    private void number(String expression, int wanted, String of, List<String> findings) {
        Object found = page.evaluate(expression);
        if (((Number) found).intValue() != wanted) {
            findings.add("has " + found + " of: " + of);
        }
    }

    private List<String> run(String part, Map<String, Object> rules) {
        return strings(page.evaluate(RUN, List.of(part, rules)));
    }

    private static List<String> strings(Object list) {
        return ((List<?>) list).stream().map(String::valueOf).toList();
    }

    private static String script() {
        try (InputStream in = Objects.requireNonNull(Axe.class.getResourceAsStream("/axe.min.js"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
