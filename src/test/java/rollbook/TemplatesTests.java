package rollbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.TextNode;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What no template may hold: words of its own, and styles or scripts that the content security policy forbids; and what is
 * the same on every page.
 */
class TemplatesTests {
    private static final Pattern LETTER = Pattern.compile("\\p{L}");
    private static final Pattern INLINED = Pattern.compile("\\[\\[.*?]]", Pattern.DOTALL);
    private static final Pattern PAPER =
            Pattern.compile("paper|label/|letterhead|packing-slip|transmittal|post/contents");
    private static final List<String> NAMES = List.of("aria-label", "aria-labelledby", "th:aria-label");

    /** What writes a figure and nothing else. */
    private static final Pattern FIGURE = Pattern.compile(
            "\\$\\{@display\\.(amount|size|exact|rate|figure|count|percent|money|duration)\\([^+]*|~\\{fragments/show :: (size|amount)\\(.*");

    private static final List<String> SPOKEN = List.of("title", "alt", "aria-label", "placeholder", "label", "summary");

    @ParameterizedTest
    @MethodSource("templates")
    void speaksOnlyThroughMessages(Path template) throws IOException {
        assertThat(bareTexts(Files.readString(template)))
                .as(template.toString())
                .isEmpty();
    }

    @ParameterizedTest
    @MethodSource("templates")
    void holdsNoStyleAndNoScript(Path template) throws IOException {
        assertThat(inlined(Files.readString(template))).as(template.toString()).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("pages")
    void everyTableOfAPageHasAName(Path template) throws IOException {
        assertThat(parse(Files.readString(template)).select("table"))
                .as(template.toString())
                .allMatch(TemplatesTests::isNamed, "has a caption or an aria-label, or stands in a box that has one");
    }

    @ParameterizedTest
    @MethodSource("pages")
    void everyHeadOfATableSaysWhetherOfAColumnOrOfARow(Path template) throws IOException {
        assertThat(parse(Files.readString(template)).select("th").eachAttr("scope"))
                .as(template.toString())
                .hasSameSizeAs(parse(Files.readString(template)).select("th"))
                .allMatch(scope -> scope.equals("col") || scope.equals("row"));
    }

    @ParameterizedTest
    @MethodSource("pages")
    void figuresOfATableStandToTheRight(Path template) throws IOException {
        assertThat(parse(Files.readString(template)).select("td"))
                .as(template.toString())
                .noneMatch(cell ->
                        FIGURE.matcher(cell.attr("th:text") + drawn(cell)).matches() && !cell.hasClass("number"));
    }

    /** The layout's. */
    @ParameterizedTest
    @MethodSource("pages")
    void noPageHasAMainHeadingOfItsOwn(Path template) throws IOException {
        Document page = parse(Files.readString(template));
        assertThat(page.select("html[th:replace^=~{layout/page] h1"))
                .as(template.toString())
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<p>Hello</p>",
                "<p title='Hello'></p>",
                "<input placeholder='Name'/>",
                "<td>[[#{a.b}]] of</td>",
            })
    void bareWordsAreFound(String html) {
        assertThat(bareTexts(html)).hasSize(1);
    }

    @Test
    void wordsFromMessagesAreNotBare() {
        assertThat(bareTexts("<p th:text=\"#{a.b}\"></p><p>[[#{a.b}]] · </p><!-- words -->"))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "<p style='color:red'/>",
                "<p th:style='|x|'/>",
                "<style>p{}</style>",
                "<script>x()</script>",
                "<a onclick='x()'/>",
                "<a hx-on:click='x()'/>",
                "<a href='javascript:x()'/>",
            })
    void stylesAndScriptsAreFound(String html) {
        assertThat(inlined(html)).hasSize(1);
    }

    static Stream<Path> templates() throws IOException {
        try (Stream<Path> all = Files.walk(Path.of("src/main/resources/templates"))) {
            return all.filter(file -> file.toString().endsWith(".html")).sorted().toList().stream();
        }
    }

    /** Without papers: they are drawn, not walked through; PapersTests asks whether they can be read aloud. */
    static Stream<Path> pages() throws IOException {
        return templates().filter(file -> !PAPER.matcher(file.toString()).find());
    }

    private static boolean isNamed(Element table) {
        return table.selectFirst("> caption") != null
                || "presentation".equals(table.attr("role"))
                || Stream.concat(Stream.of(table), table.parents().stream().filter(box -> box.hasClass("scroll")))
                        .anyMatch(element -> NAMES.stream().anyMatch(element::hasAttr)
                                || element.attr("th:attr").contains("aria-label="));
    }

    /** The fragment that a cell is filled with, if with nothing else. */
    private static String drawn(Element cell) {
        return cell.childrenSize() == 1
                ? cell.child(0).attr("th:replace") + cell.child(0).attr("th:insert")
                : "";
    }

    private static List<String> bareTexts(String html) {
        Document template = parse(html);
        Stream<String> texts = template.getAllElements().stream()
                .flatMap(element -> element.textNodes().stream())
                .map(TextNode::getWholeText)
                .map(text -> INLINED.matcher(text).replaceAll(""));
        Stream<String> attributes = template.getAllElements().stream()
                .flatMap(element -> SPOKEN.stream().map(element::attr));
        return Stream.concat(texts, attributes)
                .filter(text -> LETTER.matcher(text).find())
                .map(String::strip)
                .toList();
    }

    private static List<String> inlined(String html) {
        return parse(html).getAllElements().stream()
                .filter(TemplatesTests::isInlined)
                .map(Element::outerHtml)
                .toList();
    }

    private static boolean isInlined(Element element) {
        boolean script = element.tagName().equals("script") && !element.hasAttr("th:src");
        return script
                || element.tagName().equals("style")
                || element.attributes().asList().stream()
                        .anyMatch(attribute -> attribute.getKey().matches("(th:)?(style(append)?|on\\w+)|hx-on.*")
                                || attribute.getValue().startsWith("javascript:"));
    }

    private static Document parse(String html) {
        return Jsoup.parse(html, "", Parser.xmlParser());
    }
}
