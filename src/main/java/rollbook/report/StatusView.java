package rollbook.report;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.forecast.CoverGauge;
import rollbook.report.ReportWords.Line;

/**
 * How storage stands, on one page, in words.
 *
 * @param pools the worst first, as many as fit on the page
 * @param more how many other pools there are; empty if none
 * @param tight whether there are so many pools that each gets less room
 * @param held what is said of the cards that aren't free
 * @param heldLines the worst of them
 * @param method how it was computed and when
 */
record StatusView(
        boolean paper,
        String title,
        String production,
        String sentence,
        String printed,
        List<PoolRow> pools,
        String more,
        boolean tight,
        String held,
        List<Line> heldLines,
        String method) {

    /**
     * @param gauge draws what {@code cover} says; null when no day is to come any more
     * @param picture says what the fan shows
     * @param order what to order by when, at which cost; empty if nothing
     */
    record PoolRow(
            String name,
            String tag,
            boolean raised,
            String sentence,
            String room,
            String cover,
            @Nullable CoverGauge gauge,
            String chance,
            String order,
            FanPicture fan,
            String picture,
            String from,
            String to) {}
}
