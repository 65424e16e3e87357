package rollbook.schedule;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.picture.AxisScale;
import rollbook.picture.Coordinates;
import rollbook.schedule.DayOutlooks.Expected;

/**
 * The days of a unit as bars, in the coordinates of an SVG picture. Each day has a slot of equal width, whatever lies
 * between their dates. The plan is an outline, what was recorded fills it from below, what is still expected stands on top
 * of that with a whisker from the 10 % to the 90 % quantile.
 *
 * @param ticks the days that get a label, as many as have room
 * @param todayX start of today's slot, or of the next one; null if all days are before today
 */
record BarsChart(
        int width,
        int height,
        double plotLeft,
        double plotRight,
        AxisScale perDay,
        List<Bar> bars,
        List<Bar> ticks,
        @Nullable Double todayX) {
    private static final int LEFT_MARGIN = 56;
    private static final int RIGHT_MARGIN = 72;
    private static final int TOP_MARGIN = 24;
    private static final int BOTTOM_MARGIN = 28;
    private static final int DAY_LABEL_WIDTH = 64;
    private static final double BAR_SHARE = 0.7;

    /** A day; heights are zero where there is nothing to draw. A cancelled one has a place and no bar. */
    record Bar(
            UnitBars.Day day,
            double x,
            double width,
            double recordedY,
            double recordedHeight,
            double expectedY,
            double expectedHeight,
            double lowY,
            double highY,
            double plannedY,
            double plannedHeight) {

        /** For templates. */
        public double middle() {
            return Coordinates.round(x + width / 2);
        }

        /** The upper end of everything that is drawn of the day. */
        double topY() {
            return Math.min(Math.min(recordedY, plannedY), Math.min(expectedY, highY));
        }
    }

    /**
     * Draws the days of a unit, of which there must be at least one.
     *
     * @param width at least 200, in the units of the SVG's view box
     * @param height at least 120
     */
    static BarsChart of(UnitBars unit, int width, int height) {
        AxisScale perDay = AxisScale.of(unit.highestBytes(), height - BOTTOM_MARGIN, TOP_MARGIN);
        double slot =
                (width - LEFT_MARGIN - RIGHT_MARGIN) / (double) unit.days().size();
        List<Bar> bars = new ArrayList<>();
        Double todayX = null;
        for (int i = 0; i < unit.days().size(); i++) {
            UnitBars.Day day = unit.days().get(i);
            double start = LEFT_MARGIN + slot * i;
            if (todayX == null && !day.date().isBefore(unit.today())) {
                todayX = Coordinates.round(start);
            }
            bars.add(bar(day, start + slot * (1 - BAR_SHARE) / 2, slot * BAR_SHARE, perDay));
        }
        return new BarsChart(
                width,
                height,
                LEFT_MARGIN,
                width - RIGHT_MARGIN,
                perDay,
                bars,
                Coordinates.withRoom(bars, Bar::middle, DAY_LABEL_WIDTH),
                todayX);
    }

    private static Bar bar(UnitBars.Day day, double x, double width, AxisScale perDay) {
        boolean shot = day.state() != DayState.CANCELLED;
        long recorded = shot ? day.recorded() : 0;
        Expected expected = shot && day.isToCome() ? day.expected() : null;
        double recordedY = perDay.y(recorded);
        double expectedY = expected == null ? recordedY : Math.min(recordedY, perDay.y(expected.medianBytes()));
        double plannedY = perDay.y(shot ? day.planned() : 0);
        return new Bar(
                day,
                Coordinates.round(x),
                Coordinates.round(width),
                recordedY,
                Coordinates.round(perDay.baseY() - recordedY),
                expectedY,
                Coordinates.round(recordedY - expectedY),
                expected == null ? expectedY : Math.min(recordedY, perDay.y(expected.lowBytes())),
                expected == null ? expectedY : Math.min(recordedY, perDay.y(expected.highBytes())),
                plannedY,
                Coordinates.round(perDay.baseY() - plannedY));
    }
}
