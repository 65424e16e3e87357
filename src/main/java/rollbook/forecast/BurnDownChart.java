package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.DayRef;
import rollbook.picture.AxisScale;

/**
 * A burn-down in coordinates of an SVG picture, so that a template only prints them. Two panels share the dates: above,
 * the room left; below, the bytes per day. Each date has a slot of equal width; room changes inside its date's slot and
 * stays level between dates. What is to come is a fan: a line that half of all courses of the show stay above, a band
 * that half of them stay in, and one that eight of ten stay in.
 *
 * @param pastLine points of the room that earlier forecasts told, up to today; empty if there is none
 * @param medianLine from today to the end of the show; never below the base
 * @param innerBand outline of the 25 % to 75 % band
 * @param outerBand outline of the 10 % to 90 % band
 * @param todayX the start of today's slot
 * @param capacityY height of what today's usable items may hold, for a line with its name on it
 * @param ends where the fan ends: the 90 %, 50 % and 10 % quantiles at the end of the show
 * @param orderFlag at the order-by date; null without an order
 * @param runOut at the date by which the pool is as likely out as not, else by which it is with a chance of a tenth; null
 *     if it lasts with more than nine tenths
 */
record BurnDownChart(
        int width,
        int height,
        double plotLeft,
        double plotRight,
        AxisScale room,
        AxisScale perDay,
        List<DateTick> dateTicks,
        String pastLine,
        String medianLine,
        String innerBand,
        String outerBand,
        List<DayBar> bars,
        List<Mark> arrivals,
        double todayX,
        double capacityY,
        List<End> ends,
        @Nullable Mark orderFlag,
        @Nullable RunOutMark runOut,
        Mark endOfShow) {

    /** An end of the fan. */
    record End(double x, double y, long bytes) {}

    /** A date that gets a mark; y is on the base of the upper panel. */
    record Mark(double x, double y, LocalDate date) {}

    /** @param likely whether the chance is a half; else it is a tenth */
    record RunOutMark(double x, double y, LocalDate date, boolean likely) {}

    /** A date on the shared axis with room for its label. */
    record DateTick(double x, LocalDate date, List<DayRef> days) {}

    /**
     * A date's bytes: what was recorded, what is expected on top of it with a chance of a half, a whisker from the 10 %
     * to the 90 % quantile of that, and the plan as an outline.
     */
    record DayBar(
            LocalDate date,
            double x,
            double width,
            double actualY,
            double actualHeight,
            double expectedY,
            double expectedHeight,
            double lowY,
            double highY,
            double plannedY,
            double plannedHeight) {}

    /**
     * Draws a burn-down.
     *
     * @param width at least 200, in the units of the SVG's view box
     * @param height at least 160
     * @param orderBy the last day to order on; null without an order
     */
    static BurnDownChart of(BurnDown burnDown, @Nullable LocalDate orderBy, int width, int height) {
        return new BurnDownDrawing(burnDown, orderBy, width, height).chart();
    }
}
