package rollbook.verification;

import org.jspecify.annotations.Nullable;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.verification.GateAct.Kind;
import rollbook.verification.GateRoll.Asked;
import rollbook.verification.GateRoll.Cleared;

/**
 * What must never happen, told from the bare facts: what was sent, in what order, about what, and where the media are.
 * It knows nothing of verdicts, and counts a document from the moment it was sent, whether or not it was read or judged.
 */
final class GateOracle {
    private GateOracle() {}

    /** @return what is wrong with having done the act in that state, or null if nothing is */
    static @Nullable String fault(GateModel before, GateAct act, GateModel after) {
        if (act.kind() == Kind.CLEAR && !isProven(before, act.roll())) {
            return "cleared without proof";
        }
        if (act.kind() == Kind.APPROVE) {
            return faultOfApproval(before, act);
        }
        if (act.kind() == Kind.ERASE && !before.rolls[act.roll()].withoutProof && !isProven(before, act.roll())) {
            return "erased without proof";
        }
        if (act.kind() == Kind.ERASE && before.rolls[act.roll()].cleared != Cleared.STANDS) {
            return "erased without a clearance that stands";
        }
        if (act.kind() == Kind.ERASE
                && before.rolls[act.roll()].withoutProof
                && before.rolls[act.roll()].asked != Asked.APPROVED) {
            return "erased on an approval that was taken back";
        }
        if (act.kind() == Kind.JUDGE && standsInVain(after, act.roll())) {
            return "a clearance stands that has lost its proof";
        }
        if (before.card != CardState.BLANK && after.card == CardState.BLANK && act.kind() != Kind.ERASE) {
            return "blank without having been erased";
        }
        return faultOfRecord(before, act, after);
    }

    private static boolean standsInVain(GateModel after, int number) {
        GateRoll roll = after.rolls[number];
        return roll.cleared == Cleared.STANDS
                && !roll.withoutProof
                && !after.unjudged(number)
                && !isProven(after, number);
    }

    /** What two people do without proof, they do knowingly: another person, and of what was asked. */
    private static @Nullable String faultOfApproval(GateModel before, GateAct act) {
        GateRoll roll = before.rolls[act.roll()];
        if (roll.asked != Asked.WAITS) {
            return "approved what nobody asks for";
        }
        if (roll.askedBy == act.person()) {
            return "approved by the person who asked";
        }
        if (!before.onCard(act.roll()) || before.card != CardState.HELD) {
            return "approved for a card that isn't held";
        }
        return before.unjudged(act.roll()) || !before.isAsAsked(roll) ? "approved something else than was asked" : null;
    }

    /** What is on record stays; what fell after the card was erased is told. */
    private static @Nullable String faultOfRecord(GateModel before, GateAct act, GateModel after) {
        for (int number = 0; number < GateModel.ROLLS; number++) {
            GateRoll roll = after.rolls[number];
            GateRoll earlier = before.rolls[number];
            for (int document = 0; document < earlier.documents(); document++) {
                if (roll.content[document] != earlier.content[document]) {
                    return "a document changed";
                }
            }
            if (earlier.cleared == Cleared.ERASED && roll.cleared != Cleared.ERASED) {
                return "an erasure was taken back";
            }
            boolean told = act.kind() != Kind.JUDGE || act.roll() != number || after.unjudged(number);
            if (roll.cleared == Cleared.ERASED && !told && (fallen(after.policy, roll) & ~roll.alarmedAfter) != 0) {
                return "a copy fell after the card was erased, and no alarm tells it";
            }
        }
        return null;
    }

    private static int fallen(GatePolicy policy, GateRoll roll) {
        int fallen = 0;
        for (int medium = 0; medium < GateModel.MEDIA; medium++) {
            if ((roll.reliedOn & 1 << medium) != 0 && !isGood(policy, roll, medium)) {
                fallen |= 1 << medium;
            }
        }
        return fallen;
    }

    /** Whether the copies of a roll met the policy at that moment, by everything that had been sent until then. */
    static boolean isProven(GateModel model, int number) {
        GateRoll roll = model.rolls[number];
        int good = 0;
        for (int medium = 0; medium < GateModel.MEDIA; medium++) {
            if (!roll.hasCopyOn(medium) || model.conditions[medium] != Condition.GOOD) {
                continue;
            }
            if (isBad(roll, medium)) {
                return false;
            }
            if (isGood(model.policy, roll, medium)) {
                good |= 1 << medium;
            }
        }
        GatePolicy policy = model.policy;
        boolean tape = (good & 1 << GateModel.TAPE) != 0;
        boolean drive = (good & ~(1 << GateModel.TAPE)) != 0;
        int different = tape && drive ? 2 : tape || drive ? 1 : 0;
        return Integer.bitCount(good) >= Math.max(policy.copies, policy.items)
                && different >= Math.max(policy.kinds, policy.places)
                && (tape || !policy.offSite)
                && (policy.neededMedium < 0 || (good & 1 << policy.neededMedium) != 0);
    }

    private static boolean isGood(GatePolicy policy, GateRoll roll, int medium) {
        return agreesWithCard(roll, medium) || !policy.sourceNeeded && agreesWithAnother(roll, medium);
    }

    /** Nothing was sent of the card, and the newest documents of this copy and of another, each its own, list the same. */
    private static boolean agreesWithAnother(GateRoll roll, int medium) {
        int newest = newestAbout(roll, medium);
        for (int document = 0; document < roll.documents(); document++) {
            if (roll.describesCard(document)) {
                return false;
            }
        }
        for (int other = 0; other < GateModel.MEDIA; other++) {
            int ofOther = other == medium || !roll.hasCopyOn(other) ? -1 : newestAbout(roll, other);
            if (newest >= 0
                    && ofOther >= 0
                    && isOfItsOwn(roll, newest)
                    && isOfItsOwn(roll, ofOther)
                    && roll.content[newest] == roll.content[ofOther]) {
                return true;
            }
        }
        return false;
    }

    /** The newest document about the copy is its own and lists whatever any manifest of the card lists. */
    private static boolean agreesWithCard(GateRoll roll, int medium) {
        int newest = newestAbout(roll, medium);
        if (newest < 0 || !isOfItsOwn(roll, newest)) {
            return false;
        }
        boolean ofCard = false;
        for (int document = 0; document < roll.documents(); document++) {
            if (roll.describesCard(document)) {
                ofCard = true;
                if (!hasAllOf(roll.content[newest], roll.content[document])) {
                    return false;
                }
            }
        }
        return ofCard;
    }

    private static boolean isBad(GateRoll roll, int medium) {
        int newest = newestAbout(roll, medium);
        for (int document = 0; newest >= 0 && document < roll.documents(); document++) {
            if (roll.describesCard(document) && !hasAllOf(roll.content[newest], roll.content[document])) {
                return true;
            }
        }
        return false;
    }

    /** Lists of other bytes have each other's files, but not each other's bytes; a short one has less than both. */
    private static boolean hasAllOf(int list, int reference) {
        return reference == GateModel.SHORT || list == reference;
    }

    private static boolean isOfItsOwn(GateRoll roll, int document) {
        return !roll.describesCard(document)
                && (roll.subject[document] == GateModel.NOTHING || roll.added[document] == GateModel.NO_MEDIUM);
    }

    private static int newestAbout(GateRoll roll, int medium) {
        int newest = -1;
        for (int document = roll.documentsBefore[medium]; document < roll.documents(); document++) {
            if (roll.describesCopy(document, medium)) {
                newest = document;
            }
        }
        return newest;
    }
}
