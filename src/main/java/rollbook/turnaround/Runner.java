package rollbook.turnaround;

/**
 * How cards get from cameras to their station and back. Someone is always at hand to go.
 *
 * @param walk from the camera to the station
 * @param batch leaves when so many cards of a station’s cameras wait …
 * @param longestWaitMillis … or when the oldest has waited so long; and when the last camera of the station has wrapped
 * @param back from the station to the shelf of blank cards
 */
public record Runner(Delay walk, int batch, long longestWaitMillis, Delay back) {
    /** Cards are there at once. */
    public static final Runner NONE = new Runner(Delay.NONE, 1, 0, Delay.NONE);

    public Runner {
        Invalid.unless(batch > 0, "batch", "must be above zero");
        Invalid.unless(longestWaitMillis >= 0, "longestWaitMillis", "must not be negative");
    }
}
