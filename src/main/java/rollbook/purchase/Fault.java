package rollbook.purchase;

/**
 * Items that came and aren't what was ordered.
 *
 * @param words what is wrong with them
 */
public record Fault(Kind kind, int items, String words, Remedy remedy) {
    /** What is wrong. */
    public enum Kind {
        DAMAGED,
        /** Something else was sent than was ordered. */
        WRONG
    }

    /** What the supplier does about it. */
    public enum Remedy {
        /** Others come instead, so they are still expected. */
        REPLACED,
        /** They aren't paid for, and none comes instead. */
        CREDITED
    }
}
