package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rollbook.manifest.ManifestException;
import rollbook.manifest.ManifestProblem;
import rollbook.manifest.ManifestReader;

class ExcerptTests {
    @Test
    void showsTwoLinesOnEachSideAndPointsAtThePlace() throws IOException {
        Excerpt excerpt = around("one\ntwo\nthree\nfour\r\nfive\nsix\nseven\n", ManifestProblem.PATH_EMPTY, 4, 2);
        assertThat(excerpt.lines()).containsExactly("two", "three", "four", "five", "six");
        assertThat(excerpt.firstLine()).isEqualTo(2);
        assertThat(excerpt.beforeBad() + "|" + excerpt.bad() + "|" + excerpt.afterBad())
                .isEqualTo("f|o|ur");
        assertThat(excerpt.pointer()).isEqualTo(" ^");
    }

    @Test
    void aPlaceBehindTheEndIsAnEmptyLine() throws IOException {
        Excerpt excerpt = around("<a>\n", ManifestProblem.XML_MALFORMED, 2, 1);
        assertThat(excerpt.lines()).containsExactly("<a>", "");
        assertThat(excerpt.bad()).isEqualTo(" ");
    }

    @Test
    void columnsAreCountedAsTheReaderCountsThem() throws Exception {
        assertThat(refused("\uFEFFd41d8cd98f00b204e9800998ecf8427e  ü/é\r/x\n").bad())
                .isEqualTo("\uFFFD");
        assertThat(refused("# ok\n  \td41d8cd98f00b204e9800998ecf8427g  x\n").bad())
                .isIn("d", "g");
        assertThat(refused("😀😀\n").bad()).isEqualTo("😀");
        byte[] invalid = "d41d8cd98f00b204e9800998ecf8427e  üü".getBytes(StandardCharsets.UTF_8);
        byte[] cut = java.util.Arrays.copyOf(invalid, invalid.length - 1);
        assertThat(refused(cut).beforeBad()).endsWith("  ü");
        assertThat(refused("ab\u0000cd\n").beforeBad()).isEqualTo("ab");
    }

    /** Its lines are counted by their NULs, and a line end is a letter. */
    @Test
    void showsTheLinesOfAListThatIsEndedByNul() throws Exception {
        String md5 = "d41d8cd98f00b204e9800998ecf8427e";
        Excerpt excerpt = refused((md5 + "  a\nb\0").repeat(8) + md5 + "  /c\0");
        assertThat(excerpt.lines()).containsExactly(md5 + "  a\uFFFDb", md5 + "  a\uFFFDb", md5 + "  /c");
        assertThat(excerpt.firstLine()).isEqualTo(7);
        assertThat(excerpt.bad()).isEqualTo("/");
    }

    @Test
    void aLongLineIsCutAroundThePlaceAndSaysSo() throws IOException {
        String line = "a".repeat(5_000_000) + "ü!" + "b".repeat(5_000_000);
        Excerpt excerpt = around(line, ManifestProblem.PATH_EMPTY, 1, 5_000_002);
        assertThat(excerpt.bad()).isEqualTo("!");
        assertThat(excerpt.beforeBad()).startsWith("…a").endsWith("aü").hasSize(Excerpt.REACH + 1);
        assertThat(excerpt.afterBad()).endsWith("b…").hasSizeLessThan(Excerpt.REACH + 3);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void whateverTheDocumentTheExcerptIsShortAndPrintable(long seed) throws Exception {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 200; i++) {
            byte[] bytes = new byte[1 + random.nextInt(2_000)];
            random.nextBytes(bytes);
            if (random.nextBoolean()) {
                bytes[0] = '<';
            }
            Excerpt excerpt = refused(bytes);
            assertThat(excerpt.lines())
                    .as("seed %d, document %d", seed, i)
                    .hasSizeBetween(1, 5)
                    .allSatisfy(line -> assertThat(line)
                            .hasSizeLessThan(3 * Excerpt.REACH)
                            .satisfies(text -> assertThat(text.codePoints()).allMatch(DocumentName::printable)));
            assertThat(excerpt.beforeBad() + excerpt.bad() + excerpt.afterBad())
                    .as("seed %d, document %d", seed, i)
                    .startsWith(excerpt.lines().get(excerpt.badLine()));
        }
    }

    private static Excerpt around(String document, ManifestProblem problem, long line, int column) throws IOException {
        return Excerpt.around(
                new ByteArrayInputStream(document.getBytes(StandardCharsets.UTF_8)), problem, line, column);
    }

    private static Excerpt refused(String document) throws IOException {
        return refused(document.getBytes(StandardCharsets.UTF_8));
    }

    private static Excerpt refused(byte[] document) throws IOException {
        try {
            new ManifestReader().read(new ByteArrayInputStream(document), "x", entry -> {});
        } catch (ManifestException e) {
            return Excerpt.around(new ByteArrayInputStream(document), e.problem(), e.line(), e.column());
        }
        throw new AssertionError("the document was read");
    }
}
