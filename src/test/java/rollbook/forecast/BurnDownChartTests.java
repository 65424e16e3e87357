package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.burndown.Band;
import rollbook.burndown.DayRef;
import rollbook.burndown.PoolOutlook;

class BurnDownChartTests {
    /*
     * 528 wide: plot from 56 to 456, 400 for four dates, so 100 a date. 280 high: 280 - 24 - 28 - 28 = 200 for both
     * panels, 124 for the room (base 148, top 24), 76 for the bytes per day (base 252, top 176).
     * Room 4,000 GB of 5,000 GB on day 2: the axis goes to 5 TB, 24.8 a terabyte.
     */
    private static final int WIDTH = 528;
    private static final int HEIGHT = 280;
    private static final long TB = 1_000_000_000_000L;

    private static LocalDate date(int day) {
        return LocalDate.of(2026, 6, day);
    }

    private static PoolOutlook.Point coming(int day, Band left, Band demand, double chance) {
        return new PoolOutlook.Point(date(day), List.of(), left, demand, 0, Band.NONE, chance);
    }

    private static Band terabytes(double p10, double p25, double p50, double p75, double p90) {
        return new Band((long) (p10 * TB), (long) (p25 * TB), (long) (p50 * TB), (long) (p75 * TB), (long) (p90 * TB));
    }

    /** Day 1 was shot; day 2, today, takes about 1 TB and day 4 about 3 TB, of which there are 3. */
    private static BurnDown fourDays(@Nullable Long pastLeftBytes, PoolOutlook.ExpectedArrival... arrivals) {
        List<PoolOutlook.Point> coming = List.of(
                coming(2, terabytes(2.5, 2.75, 3, 3.25, 3.5), terabytes(0.5, 0.75, 1, 1.25, 1.5), 0),
                coming(4, terabytes(-2, -1, -0.5, 0.5, 1), terabytes(2, 3, 3.5, 3.75, 4), 0.6));
        PoolOutlook pool = new PoolOutlook(
                new UUID(0, 1),
                "Shuttle",
                4 * TB,
                5 * TB,
                0,
                coming,
                2,
                Band.certain(1),
                0.6,
                new PoolOutlook.Causes(0, 0.6, 0),
                Band.NONE,
                Band.NONE,
                Band.NONE,
                List.of(arrivals),
                0,
                0);
        return new BurnDown(
                date(2),
                date(4),
                pool,
                List.of(
                        new BurnDown.Point(date(1), List.of(day(1)), TB, TB, pastLeftBytes, null),
                        new BurnDown.Point(date(2), List.of(day(2)), TB, 0, null, coming.get(0)),
                        new BurnDown.Point(date(4), List.of(day(4)), 4 * TB, 0, null, coming.get(1))));
    }

    private static DayRef day(int number) {
        return new DayRef("Main", number, date(number));
    }

    private static BurnDownChart chart(BurnDown burnDown) {
        return BurnDownChart.of(burnDown, null, WIDTH, HEIGHT);
    }

    @Test
    void theMedianFallsWithinADateStaysLevelBetweenDatesAndStopsAtTheBase() {
        BurnDownChart chart = chart(fourDays(null));

        // From 4 TB (y 148 - 4 x 24.8 = 48.8) to 3 TB (73.6) on day 2; nothing on day 3; on day 4 below nothing.
        assertThat(chart.medianLine()).isEqualTo("156.0,48.8 256.0,73.6 356.0,73.6 456.0,148.0");
        assertThat(chart.todayX()).isEqualTo(156);
        assertThat(chart.capacityY()).isEqualTo(24);
        assertThat(chart.endOfShow().x()).isEqualTo(456);
    }

    @Test
    void eachBandIsAnOutlineThereOnTopAndBackBelow() {
        BurnDownChart chart = chart(fourDays(null));

        // 3.25 TB is 67.4, 0.5 TB 135.6; back from below nothing, 2.75 TB 79.8.
        assertThat(chart.innerBand())
                .isEqualTo("156.0,48.8 256.0,67.4 356.0,67.4 456.0,135.6 456.0,148.0 356.0,79.8 256.0,79.8 156.0,48.8");
        // 3.5 TB is 61.2, 1 TB 123.2, 2.5 TB 86.
        assertThat(chart.outerBand())
                .isEqualTo("156.0,48.8 256.0,61.2 356.0,61.2 456.0,123.2 456.0,148.0 356.0,86.0 256.0,86.0 156.0,48.8");
        assertThat(chart.ends())
                .containsExactly(
                        new BurnDownChart.End(456, 123.2, TB),
                        new BurnDownChart.End(456, 148, -TB / 2),
                        new BurnDownChart.End(456, 148, -2 * TB));
    }

    @Test
    void theRunOutIsMarkedWhereItIsLikelyAndElseWhereItTakesBadLuck() {
        assertThat(chart(fourDays(null)).runOut()).isEqualTo(new BurnDownChart.RunOutMark(356, 148, date(4), true));
    }

    @Test
    void theOrderFlagStandsAtItsDateAndOneThatIsPastAtToday() {
        BurnDown burnDown = fourDays(null);

        assertThat(BurnDownChart.of(burnDown, date(3), WIDTH, HEIGHT).orderFlag())
                .isEqualTo(new BurnDownChart.Mark(256, 148, date(3)));
        assertThat(BurnDownChart.of(burnDown, date(1), WIDTH, HEIGHT)
                        .orderFlag()
                        .x())
                .isEqualTo(156);
        assertThat(BurnDownChart.of(burnDown, date(5), WIDTH, HEIGHT).orderFlag())
                .as("after the end of the show")
                .isNull();
    }

    @Test
    void anArrivalIsMarkedAtTheEndOfTheDateOnWhichItUsuallyComes() {
        BurnDownChart chart = chart(fourDays(null, new PoolOutlook.ExpectedArrival(1, TB, date(2), date(3), date(4))));

        assertThat(chart.arrivals()).containsExactly(new BurnDownChart.Mark(356, 148, date(3)));
    }

    @Test
    void thePastIsDrawnOnlyAsFarAsItWasRecorded() {
        assertThat(chart(fourDays(null)).pastLine()).isEmpty();
        assertThat(chart(fourDays(3 * TB)).pastLine()).isEqualTo("156.0,73.6 156.0,48.8");
    }

    @Test
    void barsStackWhatIsExpectedOnWhatIsRecordedWithItsRange() {
        List<BurnDownChart.DayBar> bars = chart(fourDays(null)).bars();

        // The lower axis goes to 4 TB, 19 a terabyte; bars take the middle 70 of a slot of 100.
        assertThat(bars)
                .containsExactly(
                        new BurnDownChart.DayBar(date(1), 71, 70, 233, 19, 233, 0, 233, 233, 233, 19),
                        new BurnDownChart.DayBar(date(2), 171, 70, 252, 0, 233, 19, 242.5, 223.5, 233, 19),
                        new BurnDownChart.DayBar(date(4), 371, 70, 252, 0, 185.5, 66.5, 214, 176, 176, 76));
    }

    @Test
    void datesAreLabelledInTheMiddleOfTheirSlotsAndNeverCrowded() {
        assertThat(chart(fourDays(null)).dateTicks())
                .extracting(BurnDownChart.DateTick::x)
                .containsExactly(106.0, 206.0, 406.0);
        List<BurnDownChart.DateTick> ticks =
                BurnDownChart.of(random(1, 28), null, 360, 240).dateTicks();
        for (int i = 1; i < ticks.size(); i++) {
            assertThat(ticks.get(i).x() - ticks.get(i - 1).x()).isGreaterThanOrEqualTo(63.9);
        }
    }

    @Test
    void everyLineStaysInsideTheUpperPanelAndGoesForward() {
        for (long seed = 1; seed <= 200; seed++) {
            BurnDownChart chart = BurnDownChart.of(random(seed, 1 + (int) (seed % 20)), null, 720, 320);
            double[][] points = Arrays.stream(chart.medianLine().split(" "))
                    .map(point -> Arrays.stream(point.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toArray(double[][]::new);
            for (int i = 0; i < points.length; i++) {
                assertThat(points[i][0])
                        .as("seed %d", seed)
                        .isBetween(i == 0 ? chart.todayX() : points[i - 1][0], 648.0);
                assertThat(points[i][1])
                        .as("seed %d", seed)
                        .isBetween(chart.room().topY(), chart.room().baseY());
            }
        }
    }

    /** A pool that goes anywhere on so many days to come. */
    private static BurnDown random(long seed, int days) {
        Random random = new Random(seed);
        List<PoolOutlook.Point> coming = new ArrayList<>();
        for (int day = 1; day <= days; day++) {
            long[] left = random.longs(5, -5 * TB, 40 * TB).sorted().toArray();
            long[] demand = random.longs(5, 0, 3 * TB).sorted().toArray();
            coming.add(coming(
                    day,
                    new Band(left[0], left[1], left[2], left[3], left[4]),
                    new Band(demand[0], demand[1], demand[2], demand[3], demand[4]),
                    0));
        }
        PoolOutlook pool = new PoolOutlook(
                new UUID(0, 1),
                "Shuttle",
                random.nextLong(20 * TB),
                20 * TB,
                0,
                coming,
                days,
                Band.certain(days),
                0,
                new PoolOutlook.Causes(0, 0, 0),
                Band.NONE,
                Band.NONE,
                Band.NONE,
                List.of(),
                0,
                0);
        return new BurnDown(
                date(1),
                date(days),
                pool,
                IntStream.rangeClosed(1, days)
                        .mapToObj(day ->
                                new BurnDown.Point(date(day), List.of(day(day)), TB, 0, null, coming.get(day - 1)))
                        .toList());
    }
}
