package rollbook.purchase;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.production.MediaKind;

/**
 * Items of a kind in an order, as they were ordered.
 *
 * @param catalogueItemId null while nobody said which one of a catalogue it is
 * @param hireWeeks how long they are hired; null if they are bought
 * @param unitMinorUnits of one item, if it is hired for one week; null while nobody knows
 * @param legId whose pool they fill up, null for none
 * @param came items that came in good order
 * @param credited items that won't come and aren't paid
 * @param lastCameOn when the last of them came so far
 * @param receipts how many receipts about it count
 */
public record OrderLine(
        UUID id,
        int position,
        @Nullable UUID catalogueItemId,
        MediaKind kind,
        String model,
        @Nullable Long capacityBytes,
        @Nullable Long readBytesPerSecond,
        @Nullable Long writeBytesPerSecond,
        int items,
        @Nullable Integer hireWeeks,
        @Nullable Long unitMinorUnits,
        @Nullable UUID legId,
        String legName,
        int came,
        int credited,
        @Nullable LocalDate lastCameOn,
        int receipts) {

    /** Items of which nothing is known yet. */
    public int left() {
        return items - came - credited;
    }

    public boolean isHired() {
        return hireWeeks != null;
    }

    /** Of the line as it was ordered; null while nobody knows its price. */
    public @Nullable Long costMinorUnits() {
        return costMinorUnits(items);
    }

    /** Of so many of its items; null while nobody knows the price. */
    public @Nullable Long costMinorUnits(int ofItems) {
        if (unitMinorUnits == null) {
            return null;
        }
        long weeks = hireWeeks == null ? 1 : hireWeeks;
        return Math.multiplyExact(Math.multiplyExact(unitMinorUnits, weeks), (long) ofItems);
    }
}
