package rollbook.production;

/**
 * What must be proven before a card may be erased, besides the legs of the copy plan that are needed to clear: at least
 * this many proven copies as recorded, on this many different items, kinds of media and places.
 *
 * @param offSite whether at least one of the proven copies must be at an off-site place
 */
public record ClearingPolicy(int provenCopies, int items, int mediaKinds, int places, boolean offSite, int version) {
    /** Two proven copies on two items: the least that is common practice (no source). */
    public static final ClearingPolicy INITIAL = new ClearingPolicy(2, 2, 1, 1, false, 0);
}
