package rollbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One hand's work: colours and sizes come from tokens.css, words stand out from their ground, no rule is left over. */
class StyleSheetsTests {
    private static final Path CSS = Path.of("src/main/resources/static/css");
    private static final List<String> SHEETS = List.of("base.css", "components.css", "print.css");
    private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^{}]*)}");
    private static final Pattern BRACE = Pattern.compile("([^{};]+)\\{|}");
    private static final Pattern CLASS = Pattern.compile("\\.([a-zA-Z][\\w-]*)");
    private static final Pattern QUOTED = Pattern.compile("\"([^\"]*)\"|'([^']*)'");
    private static final Pattern COLOUR = Pattern.compile("--([\\w-]+): #([0-9a-f]{6});");
    private static final Pattern LITERAL_COLOUR = Pattern.compile("#[0-9a-fA-F]{3,8}\\b|\\b(rgb|hsl)a?\\(");
    private static final Pattern LITERAL_SIZE =
            Pattern.compile("(?<![\\w.-])(?!0(px|rem)?\\b)[\\d.]+(px|rem|pt|mm)\\b");

    /** Where sizes make the rhythm of a screen; widths of single things and strokes are their own, and paper has millimetres. */
    private static final Pattern RHYTHM = Pattern.compile("(margin|padding)(-\\w+)?|(row-|column-)?gap|font-size");

    /** Given to elements by htmx. */
    private static final Set<String> FROM_ELSEWHERE = Set.of("htmx-request");

    private record Rule(String selector, Map<String, String> values) {
        private String token(String property) {
            return values.getOrDefault(property, "").replaceAll("^var\\(--([\\w-]+)\\)$", "$1");
        }
    }

    // WCAG 2.2, success criterion 1.4.3: text 4.5:1.
    @ParameterizedTest
    @ValueSource(strings = {"light", "dark", "print"})
    void wordsStandOutFromTheirGround(String scheme) throws IOException {
        Map<String, String> colours = colours(scheme);
        List<String> weak = new ArrayList<>();
        for (Rule rule : rules()) {
            String ground = rule.token(rule.values().containsKey("background") ? "background" : "background-color");
            boolean grounded = colours.containsKey(ground);
            String text = rule.token(grounded && rule.values().containsKey("fill") ? "fill" : "color");
            List<String> grounds = grounded ? List.of(ground) : List.of("paper", "leaf");
            for (String under : grounds) {
                String over = colours.containsKey(text) ? text : "ink";
                if (contrast(colours, over, under) < 4.5) {
                    weak.add("%s: %s on %s".formatted(rule.selector(), over, under));
                }
            }
        }
        assertThat(weak).isEmpty();
    }

    // WCAG 2.2, success criterion 1.4.11: the edges of fields, the frame of what has the focus, and marks 3:1. The
    // marks
    // of consistent, size only and incomplete have an edge of ink besides.
    @ParameterizedTest
    @ValueSource(strings = {"light", "dark"})
    void whatIsDrawnStandsOutFromItsGround(String scheme) throws IOException {
        Map<String, String> colours = colours(scheme);
        for (String drawn : List.of("ink", "quiet", "accent", "alarm", "proven", "failed", "unknown")) {
            assertThat(contrast(colours, drawn, "paper")).as(drawn).isGreaterThanOrEqualTo(3);
        }
    }

    @Test
    void coloursStandInTokensOnly() throws IOException {
        for (Rule rule : rules()) {
            assertThat(rule.values().entrySet())
                    .as(rule.selector())
                    .noneMatch(value -> LITERAL_COLOUR.matcher(value.getValue()).find());
        }
    }

    @Test
    void theRhythmIsMadeOfTokensOnly() throws IOException {
        List<String> off = new ArrayList<>();
        for (Rule rule : rules("base.css", "components.css")) {
            rule.values().forEach((property, value) -> {
                if (RHYTHM.matcher(property).matches()
                        && LITERAL_SIZE.matcher(value).find()) {
                    off.add("%s { %s: %s }".formatted(rule.selector(), property, value));
                }
            });
        }
        assertThat(off).isEmpty();
    }

    @Test
    void everyTokenIsThereAndUsed() throws IOException {
        Set<String> declared = matches(Pattern.compile("(?m)^\\s*--([\\w-]+):"), read("tokens.css"));
        Set<String> used = new TreeSet<>();
        for (String sheet : List.of("tokens.css", "base.css", "components.css", "print.css")) {
            used.addAll(matches(Pattern.compile("var\\(--([\\w-]+)\\)"), read(sheet)));
        }
        assertThat(used).isEqualTo(declared);
    }

    @Test
    void everyClassIsUsed() throws IOException {
        Set<String> words = new TreeSet<>(FROM_ELSEWHERE);
        for (String folder : List.of("src/main/resources/templates", "src/main/resources/static/js", "src/main/java")) {
            try (Stream<Path> files = Files.walk(Path.of(folder))) {
                for (Path file : files.filter(Files::isRegularFile).toList()) {
                    // Line by line, for an apostrophe opens nothing.
                    Files.readAllLines(file).stream()
                            .flatMap(line -> QUOTED.matcher(line).results())
                            .map(quoted -> quoted.group(1) == null ? quoted.group(2) : quoted.group(1))
                            .forEach(quoted -> words.addAll(matches(Pattern.compile("([\\w-]+)"), quoted)));
                }
            }
        }
        Set<String> classes = rules().stream()
                .flatMap(rule -> matches(CLASS, rule.selector()).stream())
                .collect(Collectors.toCollection(TreeSet::new));
        assertThat(classes).hasSizeGreaterThan(50);
        classes.removeAll(words);
        assertThat(classes)
                .as("classes that no template, script or class names")
                .isEmpty();
    }

    @Test
    void noRuleIsWrittenTwice() throws IOException {
        for (String sheet : SHEETS) {
            assertThat(flat(read(sheet))).as(sheet).doesNotHaveDuplicates();
        }
    }

    /** Selectors, led by what they stand in, as a sheet goes from top to bottom. */
    private static List<String> flat(String css) {
        List<String> selectors = new ArrayList<>();
        Deque<String> within = new ArrayDeque<>();
        BRACE.matcher(css).results().forEach(brace -> {
            if (brace.group(1) == null) {
                within.removeLast();
                return;
            }
            String head = brace.group(1).strip().replaceAll("\\s+", " ");
            if (!head.startsWith("@")) {
                selectors.add(String.join(" ", within) + " " + head);
            }
            within.addLast(head);
        });
        assertThat(within).as("what is open at the end").isEmpty();
        return selectors;
    }

    private static List<Rule> rules() throws IOException {
        return rules(SHEETS.toArray(String[]::new));
    }

    private static List<Rule> rules(String... sheets) throws IOException {
        List<Rule> rules = new ArrayList<>();
        for (String sheet : sheets) {
            RULE.matcher(read(sheet)).results().forEach(rule -> {
                Map<String, String> values = new LinkedHashMap<>();
                for (String declaration : rule.group(2).split(";")) {
                    String[] parts = declaration.split(":", 2);
                    if (parts.length == 2) {
                        values.put(parts[0].strip(), parts[1].strip());
                    }
                }
                rules.add(new Rule(rule.group(1).strip().replaceAll("\\s+", " "), values));
            });
        }
        return rules;
    }

    /** What is paper and ink in a scheme; the dark one and print change some of the light one's colours. */
    private static Map<String, String> colours(String scheme) throws IOException {
        Map<String, String> parts = new HashMap<>();
        for (String part : read("tokens.css").split("@media ")) {
            String kind = part.startsWith("print") ? "print" : part.contains("scheme: dark") ? "dark" : "light";
            parts.merge(kind, part, String::concat);
        }
        assertThat(parts).hasSize(3);
        var colours = new HashMap<String, String>();
        for (String part : List.of("light", scheme)) {
            COLOUR.matcher(parts.get(part)).results().forEach(match -> colours.put(match.group(1), match.group(2)));
        }
        return colours;
    }

    /** The contrast ratio as WCAG 2.2 defines it: (lighter + 0.05) / (darker + 0.05). */
    private static double contrast(Map<String, String> colours, String one, String other) {
        double a = luminance(colours.get(one));
        double b = luminance(colours.get(other));
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(String colour) {
        int rgb = Integer.parseInt(colour, 16);
        return 0.2126 * linear(rgb >> 16) + 0.7152 * linear(rgb >> 8 & 0xff) + 0.0722 * linear(rgb & 0xff);
    }

    private static double linear(int channel) {
        double value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }

    private static Set<String> matches(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .map(match -> match.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static String read(String sheet) throws IOException {
        return Files.readString(CSS.resolve(sheet)).replaceAll("(?s)/\\*.*?\\*/", "");
    }
}
