package rollbook.learning;

/**
 * What was done with a day that teaches otherwise than by its own ratio.
 *
 * @param dayNumber of the day
 * @param intoDayNumber of the day with which it was taken together; else the day’s own
 * @param ratio recorded / planned as it was; NaN where nothing was planned
 */
public record Remark(Kind kind, int dayNumber, int intoDayNumber, double ratio) {
    public enum Kind {
        /** Planned so small that its ratio is mostly chance: taken together with its neighbour. */
        MERGED,
        /** As small, and no neighbour to take it together with. */
        SKIPPED,
        /** A ratio so far off that somebody should look; learned as the bound. */
        WINSORISED,
        /** Wrapped with nothing recorded. */
        NOTHING_RECORDED,
        /** Something recorded and nothing planned: no ratio; counts among the unplanned bytes. */
        UNPLANNED
    }
}
