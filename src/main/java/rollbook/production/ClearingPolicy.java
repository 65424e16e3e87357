package rollbook.production;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What must be proven of the rolls on a medium of one kind before it may be erased, besides the legs of the copy plan
 * that are needed to clear: at least this many proven copies elsewhere, on this many different items, kinds of media and
 * places.
 *
 * @param subject the kind of medium that is cleared
 * @param offSite whether at least one of the proven copies must be at an off-site place
 * @param checkedWithinDays how many days ago a copy may have been checked last and still count; null if that is all one
 * @param sourceHashNeeded whether a copy counts only if it was compared with a manifest of the card itself
 * @param roundTripNeeded whether an encoded copy counts only if its encoding was proven by decoding it again
 */
public record ClearingPolicy(
        MediaKind subject,
        int provenCopies,
        int items,
        int mediaKinds,
        int places,
        boolean offSite,
        @Nullable Integer checkedWithinDays,
        boolean sourceHashNeeded,
        boolean roundTripNeeded,
        int version) {
    /** The kinds that hold files and so may be cleared. */
    public static final List<MediaKind> SUBJECTS =
            Arrays.stream(MediaKind.values()).filter(MediaKind::hasCapacity).toList();

    /** Two proven copies on two items: the least that is common practice (no source). */
    public static ClearingPolicy initial(MediaKind subject) {
        return new ClearingPolicy(subject, 2, 2, 1, 1, false, null, true, true, 0);
    }
}
