package rollbook.verification;

import java.util.List;
import rollbook.offload.Roll;
import rollbook.verification.ClearingGate.Hold;

/**
 * Where a roll's card stands and what holds it, in the order of what a person should look at first.
 *
 * @param holds what holds the card, if it was copied and isn't cleared
 */
record RollStanding(CardStanding state, List<Hold> holds) {
    static RollStanding of(Roll roll, Proof proof) {
        if (!roll.onCard()) {
            return new RollStanding(CardStanding.OFF_CARD, List.of());
        }
        return switch (roll.cardState()) {
            case BLANK -> new RollStanding(CardStanding.OFF_CARD, List.of());
            case IN_CAMERA -> new RollStanding(CardStanding.IN_CAMERA, List.of());
            case EXPOSED -> new RollStanding(CardStanding.EXPOSED, List.of());
            case COPYING -> new RollStanding(CardStanding.COPYING, List.of());
            case CLEAR_TO_ERASE -> new RollStanding(CardStanding.CLEARED, List.of());
            case HELD -> held(proof);
        };
    }

    private static RollStanding held(Proof proof) {
        List<Hold> holds = proof.holds();
        if (holds.isEmpty()) {
            return new RollStanding(CardStanding.READY, holds);
        }
        boolean bad = proof.states().stream().anyMatch(ClearingGate.CopyState::isKnownBad);
        return new RollStanding(bad ? CardStanding.BAD_COPY : CardStanding.HELD, holds);
    }

    /** Whether the standing is about a card that is held because of its copies. */
    public boolean isHeld() {
        return state == CardStanding.HELD || state == CardStanding.BAD_COPY;
    }
}
