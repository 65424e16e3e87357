package rollbook.turnaround;

/** Reading again what was written, which proves the copies. A card is cleared after it. */
public record ReadBack(When when, Order order) {
    public static final ReadBack NEVER = new ReadBack(When.NEVER, Order.TOGETHER);

    public enum When {
        /** What was written counts as proven. */
        NEVER,
        /** The card stays in its reader until all is proven. */
        HOLDING_READER,
        /** The next card may be put in meanwhile. */
        READER_FREE,
        /** When the last camera has wrapped; until then no card is proven, so none comes back. */
        AFTER_WRAP
    }
}
