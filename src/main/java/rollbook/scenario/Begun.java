package rollbook.scenario;

/** A value that a form begins with, and where it comes from. */
record Begun(String value, Origin origin, String source) {

    enum Origin {
        /** From the shooting day's plan; the source names the formats. */
        PLAN,
        /** From the media list; the source names the item or the kind. */
        MEDIA,
        /** What earlier rolls were recorded on. */
        ROLLS,
        /** The median of the show's own sessions; the source says how many. */
        MEASURED,
        /** From the copy plan. */
        COPY_PLAN,
        /** From the day as far as it has come. */
        TONIGHT,
        /** As in the scenario that was saved last; the source names it. */
        LAST_SCENARIO,
        /** Common practice; nobody said otherwise. */
        USUAL,
        /** As it was saved. */
        KEPT
    }
}
