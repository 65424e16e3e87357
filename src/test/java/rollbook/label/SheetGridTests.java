package rollbook.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** All figures worked by hand from the measures of the sheets. */
class SheetGridTests {
    private static final Offset<Double> EXACT = within(1e-9);

    @ParameterizedTest
    @CsvSource({
        // (210 − 3 × 70) / 2 = 0; (297 − 8 × 37) / 2 = 0.5
        "A4_24, 1, 0, 0.5",
        "A4_24, 3, 140, 0.5",
        "A4_24, 4, 0, 37.5",
        "A4_24, 24, 140, 259.5",
        // (210 − 2 × 99.1 − 2.5) / 2 = 4.65; 4.65 + 99.1 + 2.5 = 106.25; (297 − 7 × 38.1) / 2 = 15.15
        "A4_14, 1, 4.65, 15.15",
        "A4_14, 2, 106.25, 15.15",
        "A4_14, 14, 106.25, 243.75",
        // (210 − 4 × 48.5) / 2 = 8; (297 − 10 × 25.4) / 2 = 21.5
        "A4_40, 1, 8, 21.5",
        "A4_40, 40, 153.5, 250.1",
        // (215.9 − 3 × 66.675 − 2 × 3.175) / 2 = 4.7625; 66.675 + 3.175 = 69.85; (279.4 − 10 × 25.4) / 2 = 12.7
        "LETTER_30, 1, 4.7625, 12.7",
        "LETTER_30, 2, 74.6125, 12.7",
        "LETTER_30, 30, 144.4625, 241.3",
        "SINGLE_62, 1, 0, 0",
    })
    void aPositionLiesWhereItsSheetIsCut(SheetKind kind, int position, double left, double top) {
        assertThat(kind.grid().leftOf(position)).isEqualTo(left, EXACT);
        assertThat(kind.grid().topOf(position)).isEqualTo(top, EXACT);
    }

    @ParameterizedTest
    @CsvSource({"0, 1, 0", "1, 1, 1", "24, 1, 1", "25, 1, 2", "24, 2, 2", "1, 24, 1", "2, 24, 2", "48, 13, 3"})
    void aBegunSheetTakesFewerLabels(int labels, int first, int pages) {
        assertThat(SheetKind.A4_24.grid().pages(labels, first)).isEqualTo(pages);
    }

    @ParameterizedTest
    @CsvSource({"0, 23, 0, 23", "1, 23, 0, 24", "2, 23, 1, 1", "26, 23, 2, 1", "0, 1, 0, 1"})
    void labelsGoOnAtTheTopOfTheNextPage(int index, int first, int page, int position) {
        assertThat(SheetKind.A4_24.grid().pageOf(index, first)).isEqualTo(page);
        assertThat(SheetKind.A4_24.grid().positionOf(index, first)).isEqualTo(position);
    }

    @ParameterizedTest
    @EnumSource(SheetKind.class)
    void everyLabelLiesOnItsPageAndNoneOnAnother(SheetKind kind) {
        SheetGrid grid = kind.grid();
        for (int position = 1; position <= grid.labelsPerPage(); position++) {
            assertThat(grid.leftOf(position) + grid.labelWidthMillimetres())
                    .isLessThanOrEqualTo(grid.pageWidthMillimetres() + 1e-9);
            assertThat(grid.topOf(position) + grid.labelHeightMillimetres())
                    .isLessThanOrEqualTo(grid.pageHeightMillimetres() + 1e-9);
            for (int other = 1; other < position; other++) {
                boolean beside =
                        Math.abs(grid.leftOf(position) - grid.leftOf(other)) >= grid.labelWidthMillimetres() - 1e-9;
                boolean below =
                        Math.abs(grid.topOf(position) - grid.topOf(other)) >= grid.labelHeightMillimetres() - 1e-9;
                assertThat(beside || below).as("%d and %d", position, other).isTrue();
            }
        }
    }

    @Test
    void labelsThatReachOverThePageAreNoSheet() {
        assertThatThrownBy(() -> SheetGrid.amid(210, 297, 3, 8, 70.1, 37, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new SheetGrid(210, 297, 3, 8, 70, 37, 0, 1.5, 0))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aPositionThatASheetDoesNotHaveIsRefused() {
        SheetGrid grid = SheetKind.A4_24.grid();
        assertThatThrownBy(() -> grid.leftOf(25)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> grid.pages(1, 0)).isInstanceOf(IllegalArgumentException.class);
    }
}
