package rollbook.turnaround;

import rollbook.quantity.DataRate;

/**
 * A rate to plan with.
 *
 * @param rate of bytes as they come from the card
 * @param sessions that it rests on; 0 if it is only stated
 */
public record LearnedRate(DataRate rate, Basis basis, int sessions) {
    public enum Basis {
        /** The median of sessions that this held back. */
        MEASURED,
        /** So much passed; it may be faster, for something else held those sessions back. */
        PASSED,
        /** What the catalogue states. */
        STATED
    }
}
