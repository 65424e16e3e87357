package rollbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.schedule.DayOutlooks.Expected;

class BarsChartTests {
    private static final long TB = 1_000_000_000_000L;
    private static final LocalDate FIRST = LocalDate.of(2026, 3, 2);

    @Test
    void aWrappedDayFillsItsOutlineAndADayToComeStandsLightWithItsRange() {
        BarsChart chart = chart(
                2,
                day(1, DayState.WRAPPED, 4 * TB, 5 * TB, null),
                day(2, DayState.PLANNED, 4 * TB, 0, new Expected(3 * TB, 4 * TB, 5 * TB)));

        // 0 to 5 TB over 200 - 28 - 24 = 148 units: 29.6 a TB, from 172 up.
        BarsChart.Bar wrapped = chart.bars().get(0);
        assertThat(wrapped.recordedY()).isEqualTo(24);
        assertThat(wrapped.recordedHeight()).isEqualTo(148);
        assertThat(wrapped.plannedY()).isEqualTo(53.6);
        assertThat(wrapped.expectedHeight()).isZero();
        BarsChart.Bar toCome = chart.bars().get(1);
        assertThat(toCome.recordedHeight()).isZero();
        assertThat(toCome.expectedHeight()).isEqualTo(118.4);
        assertThat(toCome.lowY()).isEqualTo(83.2);
        assertThat(toCome.highY()).isEqualTo(24);
    }

    @Test
    void whatIsStillExpectedOfTheDayThatIsShotStandsOnWhatIsRecorded() {
        BarsChart.Bar bar = chart(1, day(1, DayState.SHOOTING, 5 * TB, 2 * TB, new Expected(TB, 4 * TB, 5 * TB)))
                .bars()
                .get(0);

        assertThat(bar.recordedHeight()).isEqualTo(59.2);
        assertThat(bar.expectedY() + bar.expectedHeight()).isCloseTo(bar.recordedY(), within(0.05));
        // Never less than what is there already.
        assertThat(bar.lowY()).isEqualTo(bar.recordedY());
    }

    @Test
    void aCancelledDayHasItsPlaceAndNoBar() {
        BarsChart chart = chart(
                1,
                day(1, DayState.CANCELLED, 40 * TB, 0, new Expected(TB, TB, TB)),
                day(2, DayState.PLANNED, 4 * TB, 0, null));

        assertThat(chart.bars().get(0).plannedHeight()).isZero();
        assertThat(chart.bars().get(0).expectedHeight()).isZero();
        assertThat(chart.bars().get(1).x()).isGreaterThan(chart.bars().get(0).x());
        assertThat(chart.perDay().topBytes()).isEqualTo(4 * TB);
    }

    @Test
    void todayIsWhereItsDayBeginsOrTheNextOne() {
        UnitBars.Day monday = day(1, DayState.WRAPPED, TB, TB, null);
        UnitBars.Day thursday = day(4, DayState.PLANNED, TB, 0, null);

        // Two slots of 116 units from 56 on.
        assertThat(chart(1, monday, thursday).todayX()).isEqualTo(56);
        assertThat(chart(2, monday, thursday).todayX()).isEqualTo(172);
        assertThat(chart(4, monday, thursday).todayX()).isEqualTo(172);
        assertThat(chart(5, monday, thursday).todayX()).isNull();
    }

    @Test
    void aDayOutOfTheOrdinaryIsNamed() {
        assertThat(day(1, DayState.CANCELLED, TB, 0, null).remark()).isEqualTo(UnitBars.Remark.CANCELLED);
        assertThat(day(1, DayState.WRAPPED, TB, 0, null).remark()).isEqualTo(UnitBars.Remark.NOTHING_RECORDED);
        assertThat(day(1, DayState.WRAPPED, 4 * TB, 2 * TB - 1, null).remark()).isEqualTo(UnitBars.Remark.UNDER_HALF);
        assertThat(day(1, DayState.WRAPPED, 4 * TB, 2 * TB, null).remark()).isNull();
        assertThat(day(1, DayState.PLANNED, 0, 0, null).remark()).isEqualTo(UnitBars.Remark.NOT_PLANNED);
        assertThat(day(1, DayState.SHOOTING, 4 * TB, 0, null).remark()).isNull();
    }

    @Test
    void aDayOfWhichRollsAreUnknownIsNotCalledSmall() {
        UnitBars.Day day = new UnitBars.Day(new UUID(0, 1), 1, FIRST, DayState.WRAPPED, 4 * TB, TB, 2, null, false);

        assertThat(day.remark()).isNull();
    }

    @Test
    void everythingLiesInThePlotWhateverTheDaysAre() {
        DayState[] states = DayState.values();
        for (long seed = 1; seed <= 200; seed++) {
            Random random = new Random(seed);
            List<UnitBars.Day> days = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(60); i++) {
                long[] band = random.longs(3, 0, 9 * TB).sorted().toArray();
                days.add(day(
                        i + 1,
                        states[random.nextInt(states.length)],
                        random.nextLong(8 * TB),
                        random.nextLong(8 * TB),
                        random.nextBoolean() ? null : new Expected(band[0], band[1], band[2])));
            }
            BarsChart chart = BarsChart.of(new UnitBars("Main", FIRST.plusDays(random.nextInt(60)), days), 360, 200);
            double base = chart.perDay().baseY();
            for (BarsChart.Bar bar : chart.bars()) {
                assertThat(bar.topY())
                        .as("seed %d", seed)
                        .isBetween(chart.perDay().topY(), base);
                assertThat(bar.lowY()).as("seed %d", seed).isBetween(bar.highY(), base);
                assertThat(bar.x()).as("seed %d", seed).isBetween(chart.plotLeft(), chart.plotRight());
            }
        }
    }

    private static BarsChart chart(int todayNumber, UnitBars.Day... days) {
        return BarsChart.of(new UnitBars("Main", FIRST.plusDays(todayNumber - 1), List.of(days)), 360, 200);
    }

    private static UnitBars.Day day(
            int number, DayState state, long planned, long recorded, @Nullable Expected expected) {
        return new UnitBars.Day(
                new UUID(0, number), number, FIRST.plusDays(number - 1), state, planned, recorded, 0, expected, false);
    }
}
