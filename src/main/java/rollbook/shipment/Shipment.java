package rollbook.shipment;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Media packed together, or handed from one to another.
 *
 * @param number counts the production's shipments, from 1
 * @param receiver who is to get it at its place, in words; empty if nobody in particular
 * @param carrier who brings it, in words; empty if it is handed over without one
 * @param seals one a line
 * @param decided what somebody decided; how far it has come follows from its items, see {@link #state}
 * @param sentByName null while it is being packed
 * @param dispatch how often it was sent; a sending that was taken back counts
 * @param items what is in it, packed and however it went on
 * @param underWay items that are neither here nor missed
 * @param missing items that somebody missed on arrival
 * @param arrived items that arrived
 * @param lost items reported lost
 */
public record Shipment(
        UUID id,
        int number,
        UUID fromPlaceId,
        String fromPlaceName,
        UUID toPlaceId,
        String toPlaceName,
        boolean toOffSite,
        String receiver,
        String carrier,
        String seals,
        @Nullable Long weightGrams,
        String note,
        Decided decided,
        Instant packedAt,
        String packedByName,
        @Nullable Instant sentAt,
        @Nullable String sentByName,
        @Nullable Instant expectedBy,
        int dispatch,
        int version,
        int items,
        int underWay,
        int missing,
        int arrived,
        int lost) {

    private static final int GRAMS_DIGITS = 3;

    /** What somebody decided about a shipment. */
    public enum Decided {
        PACKING,
        SENT,
        DISCARDED
    }

    /** How far a shipment has come. */
    public enum State {
        PACKING,
        SENT,
        ARRIVED_IN_PART,
        ARRIVED,
        LOST_IN_PART,
        LOST,
        DISCARDED
    }

    public State state() {
        if (decided != Decided.SENT) {
            return State.valueOf(decided.name());
        }
        if (open() > 0) {
            return arrived > 0 ? State.ARRIVED_IN_PART : State.SENT;
        }
        if (lost == 0) {
            return State.ARRIVED;
        }
        return arrived > 0 ? State.LOST_IN_PART : State.LOST;
    }

    /** Items whose way hasn't ended. */
    public int open() {
        return underWay + missing;
    }

    public boolean isPacking() {
        return decided == Decided.PACKING;
    }

    /** Whether somebody may confirm that something of it arrived. */
    public boolean awaitsReceipt() {
        return decided == Decided.SENT && open() > 0;
    }

    /** Whether it should have arrived and hasn't. */
    public boolean isLate(Instant now) {
        return awaitsReceipt() && underWay > 0 && expectedBy != null && expectedBy.isBefore(now);
    }

    public boolean isHandOver() {
        return carrier.isEmpty();
    }

    /** Nothing has happened since it was sent. */
    public boolean mayBeTakenBack() {
        return decided == Decided.SENT && underWay == items;
    }

    /** The weight in plain figures, such as 12.4; empty if nobody weighed it. */
    public String kilograms() {
        return weightGrams == null
                ? ""
                : BigDecimal.valueOf(weightGrams, GRAMS_DIGITS)
                        .stripTrailingZeros()
                        .toPlainString();
    }

    public List<String> sealNumbers() {
        return seals.lines().filter(seal -> !seal.isBlank()).map(String::strip).toList();
    }
}
