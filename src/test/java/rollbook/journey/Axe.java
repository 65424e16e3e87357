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

    private static final Map<String, Object> CONTRAST =
            Map.of("runOnly", Map.of("type", "rule", "values", List.of("color-contrast")));

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

    /** What breaks any rule: the rule and the element, a line each. */
    List<String> findings() {
        return findingsIn("html");
    }

    /** The same of a part that covers others, which nobody can use until it is closed. */
    List<String> findingsIn(String selector) {
        return run(selector, ALL);
    }

    /** What breaks the rule about contrast, the only one that a change of colours can break. */
    List<String> contrastFindings() {
        return run("html", CONTRAST);
    }

    /** Whether it has a language, a title and one main heading, and fits its window. */
    List<String> shapeFindings() {
        List<String> findings = new ArrayList<>();
        number("document.querySelectorAll('h1').length", 1, "main headings", findings);
        number("Number(document.documentElement.lang !== '')", 1, "language", findings);
        number("Number(document.title !== '')", 1, "title", findings);
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
        return ((List<?>) page.evaluate(RUN, List.of(part, rules)))
                .stream().map(String::valueOf).toList();
    }

    private static String script() {
        try (InputStream in = Objects.requireNonNull(Axe.class.getResourceAsStream("/axe.min.js"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
