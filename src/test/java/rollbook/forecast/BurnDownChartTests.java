package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.forecast.Shoot.GB;
import static rollbook.forecast.Shoot.date;
import static rollbook.forecast.Shoot.item;
import static rollbook.forecast.Shoot.leg;
import static rollbook.forecast.Shoot.planned;
import static rollbook.forecast.Shoot.supply;
import static rollbook.forecast.Shoot.wrapped;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rollbook.quantity.Share;

class BurnDownChartTests {
    /*
     * 528 wide: plot from 56 to 456, 400 for four dates, so 100 a date. 280 high: 280 - 24 - 28 - 28 = 200 for both
     * panels, 124 for the room (base 148, top 24), 76 for the bytes per day (base 252, top 176).
     * Room 4,000 GB of 5,000 GB on day 2: the axis goes to 5 TB, 24.8 a terabyte.
     */
    private static final int WIDTH = 528;
    private static final int HEIGHT = 280;

    private static LegForecast fourDays(ForecastLeg.Arrival... arrivals) {
        return Shoot.only(Shoot.forecast(
                2,
                List.of(wrapped(1, 1000, 1000), planned(2, 1000), planned(4, 4000)),
                leg(null, Share.WHOLE, List.of(item(5000, 1000)), List.of(arrivals), supply(1000, 1, 1, 0))));
    }

    @Test
    void roomFallsWithinADateStaysLevelBetweenDatesAndStopsAtTheBase() {
        BurnDownChart chart = BurnDownChart.of(fourDays(), date(4), WIDTH, HEIGHT);

        // Day 2 takes 4 TB (y 148 - 4 x 24.8 = 48.8) to 3 TB (73.6); nothing on day 3; day 4 needs 4 TB of the 3.
        assertThat(chart.comingLine()).isEqualTo("156.0,48.8 256.0,73.6 356.0,73.6 456.0,148.0");
        assertThat(chart.todayX()).isEqualTo(156);
        assertThat(chart.capacityY()).isEqualTo(24);
        assertThat(chart.roomEnd()).isEqualTo(new BurnDownChart.Spot(456, 148));
        assertThat(chart.runOut()).isEqualTo(new BurnDownChart.Mark(356, 148, date(4), 1000 * GB));
        assertThat(chart.endOfShow().x()).isEqualTo(456);
        // Needed by day 3, one day of lead time: order on day 2, today.
        assertThat(chart.orderFlag()).isEqualTo(new BurnDownChart.Mark(156, 148, date(2), 1000 * GB));
    }

    @Test
    void anArrivalJumpsUpAtTheEndOfItsDate() {
        BurnDownChart chart =
                BurnDownChart.of(fourDays(new ForecastLeg.Arrival(date(3), 1, 1000 * GB)), date(4), WIDTH, HEIGHT);

        assertThat(chart.comingLine()).isEqualTo("156.0,48.8 256.0,73.6 356.0,73.6 356.0,48.8 456.0,148.0");
        assertThat(chart.arrivals()).containsExactly(new BurnDownChart.Mark(356, 148, date(3), 1000 * GB));
        assertThat(chart.orderFlag()).isNull();
        assertThat(chart.runOut()).isNull();
    }

    @Test
    void thePastIsDrawnOnlyAsFarAsItWasRecorded() {
        LegForecast leg = fourDays();
        assertThat(BurnDownChart.of(leg, date(4), WIDTH, HEIGHT).pastLine()).isEmpty();

        BurnDown withPast = leg.burnDown().withPast(Map.of(date(1), 4000 * GB));
        assertThat(withPast.points().get(0).leftBytes()).isEqualTo(4000 * GB);
        assertThat(withPast.points().get(1)).isEqualTo(leg.burnDown().points().get(1));
        assertThat(BurnDownChart.of(leg.withBurnDown(withPast), date(4), WIDTH, HEIGHT)
                        .pastLine())
                .isEqualTo("156.0,48.8");
    }

    @Test
    void barsStackWhatIsExpectedOnWhatIsRecorded() {
        List<BurnDownChart.DayBar> bars =
                BurnDownChart.of(fourDays(), date(4), WIDTH, HEIGHT).bars();

        // The lower axis goes to 4 TB, 19 a terabyte; bars take the middle 70 of a slot of 100.
        assertThat(bars)
                .containsExactly(
                        new BurnDownChart.DayBar(date(1), 71, 70, 233, 19, 233, 0, 233),
                        new BurnDownChart.DayBar(date(2), 171, 70, 252, 0, 233, 19, 233),
                        new BurnDownChart.DayBar(date(4), 371, 70, 252, 0, 176, 76, 176));
    }

    @Test
    void datesAreLabelledInTheMiddleOfTheirSlotsAndNeverCrowded() {
        assertThat(BurnDownChart.of(fourDays(), date(4), WIDTH, HEIGHT).dateTicks())
                .extracting(BurnDownChart.DateTick::x)
                .containsExactly(106.0, 206.0, 406.0);
        LegForecast longShow = Shoot.only(Shoot.forecast(1, Shoot.plan(1, 60, 100), Shoot.keptLeg(item(9000, 0))));
        List<BurnDownChart.DateTick> ticks =
                BurnDownChart.of(longShow, date(60), 360, 240).dateTicks();
        for (int i = 1; i < ticks.size(); i++) {
            assertThat(ticks.get(i).x() - ticks.get(i - 1).x()).isGreaterThanOrEqualTo(63.9);
        }
    }

    @Test
    void everyLineStaysInsideTheUpperPanelAndGoesForward() {
        for (long seed = RandomShow.FIRST_SEED; seed <= RandomShow.LAST_SEED; seed++) {
            StorageForecast forecast = SimpleRatioForecast.of(RandomShow.of(seed));
            for (LegForecast leg : forecast.legs()) {
                BurnDownChart chart = BurnDownChart.of(leg, forecast.endOfShow(), 720, 320);
                double[][] points = Arrays.stream(chart.comingLine().split(" "))
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
    }
}
