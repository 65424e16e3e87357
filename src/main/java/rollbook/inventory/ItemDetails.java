package rollbook.inventory;

import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What is known of an item and may be corrected later; where it is and what condition it is in are changed by
 * {@link Custody} instead.
 *
 * @param code as on the label; letters become capitals
 * @param serial the maker’s number, empty if unknown; of items that are neither retired nor returned each has its own
 * @param capacityBytes needed for cards, drives, arrays and tapes
 * @param costMinorUnits price if bought, price per week if hired, in the currency's smallest unit
 * @param hiredUntil when a hired item is due back
 * @param legId the leg of the copy plan whose pool the item belongs to; its kind must be the item's
 */
public record ItemDetails(
        String code,
        String serial,
        String model,
        @Nullable Long capacityBytes,
        @Nullable Long readBytesPerSecond,
        @Nullable Long writeBytesPerSecond,
        Ownership ownership,
        String supplier,
        @Nullable Long costMinorUnits,
        @Nullable LocalDate hiredUntil,
        @Nullable UUID legId) {

    public static final int LONGEST_SERIAL = 64;

    /** Whether it can be printed as a bar code, stands in a file name, and is read out without being spelt. */
    public static boolean canBeCode(String code) {
        return ItemCells.CODE.matcher(code).matches();
    }

    ItemDetails withCode(String other) {
        return new ItemDetails(
                other,
                serial,
                model,
                capacityBytes,
                readBytesPerSecond,
                writeBytesPerSecond,
                ownership,
                supplier,
                costMinorUnits,
                hiredUntil,
                legId);
    }
}
