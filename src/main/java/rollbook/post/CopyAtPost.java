package rollbook.post;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.Condition;
import rollbook.offload.Copy;
import rollbook.shipment.SentItem;
import rollbook.shipment.ShipmentItem;
import rollbook.verification.CopyStanding;

/**
 * A copy as post sees it.
 *
 * @param received whether post confirmed that its medium came with it, or read it there
 * @param stay when its medium was at post, the last time that matters to the copy; null if it never was
 * @param sent the last shipment of its medium to post since it was written; null if there was none
 */
record CopyAtPost(
        String rollCode,
        Copy copy,
        CopyStanding standing,
        PostState state,
        boolean received,
        @Nullable Stay stay,
        @Nullable SentItem sent) {

    /**
     * @param stays of the copy's medium at post, in their order
     * @param sent shipments of the medium to post, in their order
     */
    static CopyAtPost of(
            String rollCode, Copy copy, CopyStanding standing, List<Stay> stays, List<SentItem> sent, Instant now) {
        Stay read = stays.stream()
                .filter(stay -> standing.checkedAt() != null && stay.includes(standing.checkedAt()))
                .findFirst()
                .orElse(null);
        Stay last = stays.stream()
                .filter(stay -> copy.erasedAt() == null || stay.arrivedAt().isBefore(copy.erasedAt()))
                .filter(stay -> stay.until() == null || stay.until().isAfter(copy.writtenFrom()))
                .reduce((earlier, later) -> later)
                .orElse(null);
        Stay stay = read == null ? last : read;
        SentItem shipment = sent.stream()
                .filter(one -> one.isOpen() || !one.sentAt().isBefore(copy.writtenFrom()))
                .reduce((earlier, later) -> later)
                .orElse(null);
        PostState state = state(copy, standing, read, last, shipment, sent, stays, now);
        boolean received = read != null || last != null && (isConfirmed(last, stays, sent) || wasErasedIn(last, copy));
        return new CopyAtPost(rollCode, copy, standing, state, received, stay, shipment);
    }

    private static PostState state(
            Copy copy,
            CopyStanding standing,
            @Nullable Stay read,
            @Nullable Stay last,
            @Nullable SentItem shipment,
            List<SentItem> sent,
            List<Stay> stays,
            Instant now) {
        boolean open = shipment != null && shipment.isOpen();
        boolean concernsPost = read != null || last != null || shipment != null;
        if (copy.isErased()) {
            return last == null ? PostState.NOT_SENT : PostState.WENT_BACK;
        }
        if (copy.itemCondition() == Condition.LOST) {
            return concernsPost ? PostState.LOST : PostState.NOT_SENT;
        }
        if (last != null && last.isCurrent() && last.isDenied(standing.checkedAt())
                || open && Objects.requireNonNull(shipment).state() == ShipmentItem.State.MISSING) {
            return PostState.NOT_HERE;
        }
        boolean thereOrComing = open || last != null && last.isCurrent();
        if (standing.bad() && (thereOrComing || read != null)) {
            return PostState.DIFFERS;
        }
        if (copy.itemCondition() == Condition.QUARANTINED && (thereOrComing || read != null)) {
            return PostState.DOUBTED;
        }
        if (read != null) {
            return standing.proven() ? PostState.PROVEN : PostState.READ;
        }
        if (open) {
            return shipment.isLate(now) ? PostState.LATE : PostState.UNDER_WAY;
        }
        if (last == null) {
            return PostState.NOT_SENT;
        }
        if (!last.isCurrent()) {
            return PostState.WENT_BACK;
        }
        return isConfirmed(last, stays, sent) ? PostState.ARRIVED : PostState.SAID;
    }

    /** Whether post said that the medium is there, it came by a shipment that post confirmed, or nobody had to send it. */
    static boolean isConfirmed(Stay stay, List<Stay> stays, List<SentItem> sent) {
        if (stay.here() != null) {
            return stay.here();
        }
        return stay.registered() || receipt(stay, stays, sent) != null;
    }

    /** The shipment with which the medium came for a stay, if post confirmed it: one sent since it was there before. */
    static @Nullable SentItem receipt(Stay stay, List<Stay> stays, List<SentItem> sent) {
        Instant before = stays.stream()
                .map(Stay::until)
                .filter(until -> until != null && !until.isAfter(stay.arrivedAt()))
                .max(Instant::compareTo)
                .orElse(Instant.MIN);
        return sent.stream()
                .filter(one -> one.state() == ShipmentItem.State.ARRIVED
                        && !one.sentAt().isAfter(stay.arrivedAt())
                        && !one.sentAt().isBefore(before))
                .reduce((earlier, later) -> later)
                .orElse(null);
    }

    /** Whoever erased it there had it. */
    private static boolean wasErasedIn(Stay stay, Copy copy) {
        return copy.erasedAt() != null && stay.includes(copy.erasedAt());
    }

    /** Whether it is worth telling beside the roll: it is at post, was, or is on its way. */
    boolean concernsPost() {
        return state != PostState.NOT_SENT;
    }

    boolean isProvenThere() {
        return state == PostState.PROVEN;
    }
}
