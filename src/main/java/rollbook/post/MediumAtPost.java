package rollbook.post;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.Condition;
import rollbook.offload.Copy;
import rollbook.production.Leg;
import rollbook.shipment.SentItem;
import rollbook.shipment.ShipmentItem;
import rollbook.verification.MediumStanding;

/**
 * A medium with copies that is at post, on its way there, or was lost with post waiting for it.
 *
 * @param any one of its copies, for what it says of the medium
 * @param leg whose medium it is; null if it is no leg's
 * @param copies those on it now, not those that were erased
 * @param gate whether it may be erased
 * @param stay null while it isn't at post
 * @param sent its last shipment to post, if there was one
 * @param receipt the shipment with which it came, if somebody confirmed it
 * @param leaving the shipment that it is packed for or on its way with from post, if there is one
 */
record MediumAtPost(
        Copy any,
        @Nullable Leg leg,
        List<CopyAtPost> copies,
        MediumStanding gate,
        @Nullable Stay stay,
        @Nullable SentItem sent,
        @Nullable SentItem receipt,
        @Nullable SentItem leaving,
        Step step) {

    /** What comes next for it; the most pressing first. */
    enum Step {
        /** It was lost. */
        LOST,
        /** It isn't there although it should be. */
        SEEK,
        /** A copy on it differs. */
        COMPARE,
        /** It is late; confirm it when it comes. */
        AWAIT_LATE,
        /** Say whether it is there. */
        SAY,
        /** Record that it was erased. */
        ERASE,
        /** Clear it. */
        CLEAR,
        /** Read what is on it. */
        READ,
        /** Send it back. */
        SEND_BACK,
        /** In quarantine. */
        DOUBTED,
        /** On its way; confirm it when it comes. */
        AWAIT,
        /** It comes back into use, but something on it isn't proven elsewhere yet. */
        HOLD,
        /** Packed, or on its way from post. */
        LEAVES,
        /** It is kept, and read. */
        KEEP;

        static Step of(
                Condition condition,
                boolean returns,
                List<CopyAtPost> copies,
                MediumStanding gate,
                @Nullable SentItem coming,
                boolean leaves,
                boolean confirmed,
                boolean denied,
                boolean late) {
            if (condition == Condition.LOST) {
                return LOST;
            }
            if (denied || coming != null && coming.state() == ShipmentItem.State.MISSING) {
                return SEEK;
            }
            if (coming != null) {
                return late ? AWAIT_LATE : AWAIT;
            }
            if (leaves) {
                return LEAVES;
            }
            if (copies.stream().anyMatch(copy -> copy.state() == PostState.DIFFERS)) {
                return COMPARE;
            }
            if (condition == Condition.QUARANTINED) {
                return DOUBTED;
            }
            if (!confirmed) {
                return SAY;
            }
            return switch (gate.state()) {
                case CLEARED -> ERASE;
                case EMPTY -> returns ? SEND_BACK : KEEP;
                case READY -> returns ? CLEAR : readOrKeep(copies);
                case HELD -> unread(copies) > 0 ? READ : returns ? HOLD : KEEP;
            };
        }

        private static Step readOrKeep(List<CopyAtPost> copies) {
            return unread(copies) > 0 ? READ : KEEP;
        }
    }

    private static long unread(List<CopyAtPost> copies) {
        return copies.stream()
                .filter(copy -> copy.state() == PostState.ARRIVED || copy.state() == PostState.SAID)
                .count();
    }

    /** Copies on it that nobody has read at post. */
    public int unread() {
        return (int) unread(copies);
    }

    /** Copies on it that were read at post and are proven by that. */
    public int proven() {
        return (int) copies.stream().filter(CopyAtPost::isProvenThere).count();
    }

    public boolean returns() {
        return leg != null && leg.returnsAfterDays() != null;
    }

    /** The rolls with a copy on it. */
    public int rolls() {
        return (int)
                copies.stream().map(copy -> copy.copy().rollId()).distinct().count();
    }

    /** Whether a shipment that it is in waits for post to confirm what came. */
    public boolean mayBeConfirmed() {
        return sent != null && sent.isOpen();
    }

    /** Whether it is said to be there, and post says that it isn't. */
    public boolean isDenied() {
        return step == Step.SEEK && stay != null && !mayBeConfirmed();
    }

    /** Whether somebody at post has something to do about it. */
    boolean needsPost() {
        return switch (step) {
            case SAY, ERASE, CLEAR, READ, SEND_BACK, COMPARE, SEEK, AWAIT_LATE -> true;
            case LOST, DOUBTED, AWAIT, HOLD, LEAVES, KEEP -> false;
        };
    }
}
