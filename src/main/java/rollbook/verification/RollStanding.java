package rollbook.verification;

import java.util.List;
import rollbook.offload.Roll;
import rollbook.verification.ClearingGate.Hold;

/**
 * Where a roll's card stands and what holds it, in the order of what a person should look at first.
 *
 * @param holds what holds the card, if it was copied and isn't cleared
 */
record RollStanding(State state, List<Hold> holds) {
    enum State {
        /** Copied, and a copy is known to be bad. */
        BAD_COPY,
        /** Copied, and not all is proven that must be. */
        HELD,
        /** Nothing holds the card; somebody may clear it. */
        READY,
        EXPOSED,
        COPYING,
        IN_CAMERA,
        CLEARED,
        /** The card was erased, or holds another roll by now. */
        OFF_CARD
    }

    static RollStanding of(Roll roll, Proof proof) {
        if (!roll.onCard()) {
            return new RollStanding(State.OFF_CARD, List.of());
        }
        return switch (roll.cardState()) {
            case BLANK -> new RollStanding(State.OFF_CARD, List.of());
            case IN_CAMERA -> new RollStanding(State.IN_CAMERA, List.of());
            case EXPOSED -> new RollStanding(State.EXPOSED, List.of());
            case COPYING -> new RollStanding(State.COPYING, List.of());
            case CLEAR_TO_ERASE -> new RollStanding(State.CLEARED, List.of());
            case HELD -> held(proof);
        };
    }

    private static RollStanding held(Proof proof) {
        List<Hold> holds = proof.holds();
        if (holds.isEmpty()) {
            return new RollStanding(State.READY, holds);
        }
        boolean bad = proof.states().stream().anyMatch(ClearingGate.CopyState::isKnownBad);
        return new RollStanding(bad ? State.BAD_COPY : State.HELD, holds);
    }

    /** Whether the standing is about a card that is held because of its copies. */
    public boolean isHeld() {
        return state == State.HELD || state == State.BAD_COPY;
    }
}
