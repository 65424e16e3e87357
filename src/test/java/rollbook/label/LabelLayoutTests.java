package rollbook.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.core.io.ClassPathResource;
import rollbook.web.PortalAddress;

class LabelLayoutTests {
    /** Worked by hand: 5 mm at the page's left edge, 5 − 0.5 at its top. */
    @Test
    void nothingIsPrintedWhereOfficePrintersCanNot() {
        LabelLayout layout = LabelLayout.of(SheetKind.A4_24.grid());
        assertThat(layout.sidePaddingMillimetres()).isEqualTo(5);
        assertThat(layout.topPaddingMillimetres()).isEqualTo(4.5);
        assertThat(layout.symbolMillimetres()).isEqualTo(0.45 * 60, within(1e-9));
        assertThat(LabelLayout.of(SheetKind.A4_40.grid()).sidePaddingMillimetres())
                .isEqualTo(2);
    }

    /** A common rule, from memory: a third of a millimetre a module is read by any phone; ten points can be read. */
    @ParameterizedTest
    @EnumSource(SheetKind.class)
    void theLongestAddressAndCodeCanStillBeRead(SheetKind kind) {
        LabelLayout layout = LabelLayout.of(kind.grid());
        String longest = "https://" + "a".repeat(PortalAddress.LONGEST - 8) + "/p/" + "P".repeat(20) + "/find?code="
                + "C".repeat(LabelLayout.LONGEST_CODE);
        assertThat(layout.symbolMillimetres() / QrSymbol.of(longest).modules()).isGreaterThan(0.32);
        assertThat(layout.code(LabelLayout.LONGEST_CODE).sizeMillimetres()).isGreaterThan(2.4);
        assertThat(layout.code(10).sizeMillimetres()).isGreaterThan(3.5);
        assertThat(layout.textMillimetres()).as("six points").isGreaterThan(2.1);
    }

    @ParameterizedTest
    @EnumSource(SheetKind.class)
    void everyCodeFitsBesideItsSymbol(SheetKind kind) throws IOException {
        double letterWidth = letterWidth();
        LabelLayout layout = LabelLayout.of(kind.grid());
        for (int letters = 1; letters <= LabelLayout.LONGEST_CODE; letters++) {
            LabelLayout.Code code = layout.code(letters);
            var lines = layout.lines("X".repeat(letters));
            assertThat(String.join("", lines)).hasSize(letters);
            assertThat(lines)
                    .allSatisfy(line -> assertThat(line.length() * letterWidth * code.sizeMillimetres())
                            .isLessThanOrEqualTo(layout.wordsWidthMillimetres()));
            double height = lines.size() * LabelLayout.LINE_HEIGHT * code.sizeMillimetres()
                    + LabelLayout.LINES_BELOW * layout.lineMillimetres();
            assertThat(height).isLessThanOrEqualTo(layout.wordsHeightMillimetres() + 1e-9);
        }
    }

    @Test
    void aCodeThatIsReadableOnOneLineIsNotBroken() {
        LabelLayout layout = LabelLayout.of(SheetKind.A4_40.grid());
        assertThat(layout.lines("CARD-001")).containsExactly("CARD-001");
        assertThat(layout.lines("DRIVE-SHUTTLE-0002")).containsExactly("DRIVE-SHU", "TTLE-0002");
    }

    /** Of a letter of the face that codes are set in, as a part of its size; read from the font. */
    private static double letterWidth() throws IOException {
        try (TrueTypeFont font = new TTFParser()
                .parse(new RandomAccessReadBuffer(
                        new ClassPathResource("fonts/DejaVuSansMono-Bold.ttf").getInputStream()))) {
            return font.getAdvanceWidth(font.nameToGID("X")) / (double) font.getUnitsPerEm();
        }
    }
}
