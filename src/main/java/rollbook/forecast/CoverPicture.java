package rollbook.forecast;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.picture.Coordinates;

/**
 * How many shooting days each pool covers, on one axis. Places are percentages, so that a page, a phone and paper each
 * stretch it as they like and the words stay as they are.
 *
 * @param daysToCome the length of the axis, in shooting days of all units
 * @param rows the worst first
 */
public record CoverPicture(int daysToCome, List<Label> ticks, List<Row> rows) {

    /** Words at a place. Near the ends of the axis they stand beside it rather than around it. */
    public record Label(String x, String anchor, String text) {
        /** What half a letter takes of the width of a phone. */
        private static final double HALF_A_LETTER = 0.01;

        static Label of(double share, String text) {
            double half = text.length() * HALF_A_LETTER;
            String anchor = share < half ? "start" : share > 1 - half ? "end" : "middle";
            return new Label(Coordinates.percent(share), anchor, text);
        }
    }

    /**
     * A pool.
     *
     * @param tag what to do about it, in a few words
     * @param raised whether there is something to do
     * @param says the same as the bar, as a sentence
     * @param covered at the end of the bar
     * @param lead where an order placed at once comes; null where that isn't known or is after the last day
     */
    public record Row(
            String name,
            String tag,
            boolean raised,
            String says,
            Bar bar,
            Label covered,
            @Nullable Label lead,
            Cells cells) {}

    /** The same as cells of a table: shooting days, and the date on which an order placed at once comes; empty if unknown. */
    public record Cells(String median, String low, String high, String arrival) {}

    /** What is sure to nine of ten, where the median is, and what lies between the first and one of ten. */
    public record Bar(String sure, String median, String between) {
        static Bar of(CoverGauge gauge) {
            return new Bar(
                    Coordinates.percent(gauge.low()),
                    Coordinates.percent(gauge.median()),
                    Coordinates.percent(gauge.high() - gauge.low()));
        }
    }
}
