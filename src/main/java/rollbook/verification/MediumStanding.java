package rollbook.verification;

import java.util.List;

/**
 * Whether a drive, array or tape may be erased.
 *
 * @param rolls on it
 * @param waitsFor a sentence for each roll that holds it
 */
public record MediumStanding(State state, int rolls, List<String> waitsFor) {
    public static final MediumStanding EMPTY = new MediumStanding(State.EMPTY, 0, List.of());

    /** How far a medium is on its way to being used again. */
    public enum State {
        /** Nothing is on it, as far as anybody logged; or it was erased. */
        EMPTY,
        /** A roll on it isn't proven elsewhere as the policy asks. */
        HELD,
        /** Somebody may clear it. */
        READY,
        /** Cleared, and not erased yet. */
        CLEARED;

        static State of(MediumProof proof, boolean cleared) {
            if (cleared) {
                return CLEARED;
            }
            if (proof.rolls().isEmpty()) {
                return EMPTY;
            }
            return proof.mayBeCleared() ? READY : HELD;
        }
    }
}
