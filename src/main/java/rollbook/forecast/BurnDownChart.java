package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.DayRef;

/**
 * A burn-down in coordinates of an SVG picture, so that a template only prints them. Two panels share the dates: above,
 * the room left; below, the bytes per day. Each date has a slot of equal width; room falls inside its date's slot, stays
 * level between dates, and jumps up at the end of the slot in which an order arrives.
 *
 * @param pastLine points of the room that earlier forecasts recorded, up to today; empty if there is none
 * @param comingLine points of the room expected, from today to the end of the show; never below the base
 * @param todayX the start of today's slot
 * @param capacityY height of what today's usable items may hold, for a line with its name on it
 * @param roomEnd where the coming line ends, for its label
 * @param orderFlag at the order-by date, or at today if that is past; null without an order
 */
public record BurnDownChart(
        int width,
        int height,
        double plotLeft,
        double plotRight,
        AxisScale room,
        AxisScale perDay,
        List<DateTick> dateTicks,
        String pastLine,
        String comingLine,
        List<DayBar> bars,
        List<Mark> arrivals,
        double todayX,
        double capacityY,
        Spot roomEnd,
        @Nullable Mark orderFlag,
        @Nullable Mark runOut,
        Mark endOfShow) {

    /** A place in the picture. */
    public record Spot(double x, double y) {}

    /** A date that gets a mark; y is on the base of the upper panel. */
    public record Mark(double x, double y, LocalDate date, long bytes) {}

    /** A date on the shared axis with room for its label. */
    public record DateTick(double x, LocalDate date, List<DayRef> days) {}

    /** A date's bytes: what was recorded, what is expected on top of it, and the plan as a line across. */
    public record DayBar(
            LocalDate date,
            double x,
            double width,
            double actualY,
            double actualHeight,
            double expectedY,
            double expectedHeight,
            double plannedY) {}

    /**
     * Draws the leg's burn-down.
     *
     * @param width at least 200, in the units of the SVG's view box
     * @param height at least 160
     */
    public static BurnDownChart of(LegForecast leg, LocalDate endOfShow, int width, int height) {
        return new BurnDownDrawing(leg, endOfShow, width, height).chart();
    }

    /** A tenth of a unit is finer than any screen shows, and keeps the page small. */
    static double round(double coordinate) {
        return Math.round(coordinate * 10) / 10.0;
    }
}
