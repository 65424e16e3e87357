package rollbook.turnaround;

/** Something that goes wrong on a day, for certain. */
public sealed interface Mishap {
    /**
     * An offload proves bad at its end: its card goes to the head of the queue and starts again.
     *
     * @param offloadNumber counted from 1 over the day in the order in which offloads start, repeated ones too
     */
    record Repeat(int offloadNumber) implements Mishap {
        public Repeat {
            Invalid.unless(offloadNumber > 0, "offloadNumber", "must be above zero");
        }
    }

    /** A reader takes no more cards; the one in it goes to the head of the queue and starts again elsewhere. */
    record ReaderDies(String reader, long atMillis) implements Mishap {
        public ReaderDies {
            Invalid.unless(atMillis >= 0, "atMillis", "must not be negative");
        }
    }
}
