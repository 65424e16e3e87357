package rollbook.cost;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.math.BigInteger;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Worked by hand, in cents. */
class CostSheetTests {
    private static final CostLine DRIVES_CAME = line(Stage.SPENT, CostKind.DRIVE, false, 4 * 18_000);
    private static final CostLine DRIVES_DUE = line(Stage.COMMITTED, CostKind.DRIVE, false, 2 * 18_000);
    private static final CostLine DELIVERY = line(Stage.SPENT, CostKind.DELIVERY, false, 1_500);
    private static final CostLine READER_BEGUN = line(Stage.SPENT, CostKind.READER, true, 3 * 4_000);
    private static final CostLine READER_AGREED = line(Stage.COMMITTED, CostKind.READER, true, 2 * 4_000);
    private static final CostLine TAPES_LATER = line(Stage.TO_COME, CostKind.TAPE, false, 45_050);
    private static final List<CostLine> ALL =
            List.of(DRIVES_CAME, DRIVES_DUE, DELIVERY, READER_BEGUN, READER_AGREED, TAPES_LATER);

    @Test
    void stagesAddUpToTheTotal() {
        CostSheet sheet = new CostSheet(ALL, null);
        assertThat(sheet.of(Stage.SPENT)).isEqualTo(72_000 + 1_500 + 12_000);
        assertThat(sheet.of(Stage.COMMITTED)).isEqualTo(36_000 + 8_000);
        assertThat(sheet.of(Stage.TO_COME)).isEqualTo(45_050);
        assertThat(sheet.total()).isEqualTo(174_550);
    }

    @Test
    void whatIsBoughtStandsAgainstWhatIsHiredWithoutDeliveries() {
        CostSheet sheet = new CostSheet(ALL, null);
        assertThat(sheet.of(false)).isEqualTo(72_000 + 36_000 + 45_050);
        assertThat(sheet.of(true)).isEqualTo(20_000);
    }

    @Test
    void aBudgetThatDoesNotSufficeIsShortByTheRest() {
        CostSheet sheet = new CostSheet(ALL, 150_000L);
        assertThat(sheet.left()).isEqualTo(150_000 - 174_550);
        assertThat(sheet.leftToday()).isEqualTo(150_000 - 85_500 - 44_000);
    }

    @Test
    void withoutABudgetNothingIsLeftOrLacking() {
        CostSheet sheet = new CostSheet(ALL, null);
        assertThat(sheet.left()).isNull();
        assertThat(sheet.leftToday()).isNull();
    }

    @Test
    void eachKindIsTakenApartIntoBoughtAndHiredAndWhatCostsNothingIsLeftOut() {
        assertThat(new CostSheet(ALL, null).byKind())
                .containsExactly(
                        new CostSheet.OfKind(CostKind.READER, true, 12_000, 8_000, 0),
                        new CostSheet.OfKind(CostKind.DRIVE, false, 72_000, 36_000, 0),
                        new CostSheet.OfKind(CostKind.TAPE, false, 0, 0, 45_050),
                        new CostSheet.OfKind(CostKind.DELIVERY, false, 1_500, 0, 0));
    }

    @Test
    void costsPerTerabyteAndPerDayAreRoundedToTheCent() {
        // 85,500 / 12.5 = 6,840 and 85,500 / 7 = 12,214.28…
        Scope soFar = new Scope(BigInteger.valueOf(12_500_000_000_000L), 7);
        assertThat(soFar.perTerabyteMinorUnits(85_500)).isEqualTo(6_840);
        assertThat(soFar.perDayMinorUnits(85_500)).isEqualTo(12_214);
        // Halves go up: 1 / 2 = 0.5
        assertThat(new Scope(BigInteger.TEN.pow(12).shiftLeft(1), 2).perTerabyteMinorUnits(1))
                .isEqualTo(1);
        assertThat(new Scope(BigInteger.ZERO, 2).perDayMinorUnits(1)).isEqualTo(1);
    }

    @Test
    void nothingIsDividedByNoBytesAndNoDays() {
        Scope nothing = new Scope(BigInteger.ZERO, 0);
        assertThat(nothing.perTerabyteMinorUnits(85_500)).isNull();
        assertThat(nothing.perDayMinorUnits(85_500)).isNull();
    }

    @Test
    void moneyBeyondALongIsRefusedRatherThanWrappedRound() {
        CostLine most = line(Stage.SPENT, CostKind.ARRAY, false, Long.MAX_VALUE);
        CostSheet sheet = new CostSheet(List.of(most, DELIVERY), null);
        assertThatExceptionOfType(ArithmeticException.class).isThrownBy(sheet::total);
    }

    @Test
    void aCostBelowZeroIsNone() {
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> line(Stage.SPENT, CostKind.CARD, false, -1));
    }

    private static CostLine line(Stage stage, CostKind kind, boolean hired, long minorUnits) {
        return new CostLine(stage, kind, hired, minorUnits, kind.name(), "", "", null);
    }
}
