package rollbook.verification;

import rollbook.production.ClearingPolicy;
import rollbook.production.MediaKind;

/**
 * What may be asked before a card is cleared, one demand at a time, so that no demand hides behind another.
 *
 */
enum GatePolicy {
    TWO_COPIES(2, 1, 1, 1, false, -1, true),
    TWO_ITEMS(1, 2, 1, 1, false, -1, true),
    TWO_KINDS(1, 1, 2, 1, false, -1, true),
    TWO_PLACES(1, 1, 1, 2, false, -1, true),
    OFF_SITE(1, 1, 1, 1, true, -1, true),
    LEG(1, 1, 1, 1, false, 1, true),
    WITHOUT_SOURCE(2, 1, 1, 1, false, -1, false);

    static final GatePolicy[] ALL = values();

    final int copies;
    final int items;
    final int kinds;
    final int places;
    final boolean offSite;
    /** The medium whose leg is needed to clear, or -1. */
    final int neededMedium;

    final boolean sourceNeeded;

    GatePolicy(int copies, int items, int kinds, int places, boolean offSite, int neededMedium, boolean sourceNeeded) {
        this.copies = copies;
        this.items = items;
        this.kinds = kinds;
        this.places = places;
        this.offSite = offSite;
        this.neededMedium = neededMedium;
        this.sourceNeeded = sourceNeeded;
    }

    /** The same as the portal keeps it for cards. */
    ClearingPolicy ofCards(int version) {
        return new ClearingPolicy(
                MediaKind.CARD, copies, items, kinds, places, offSite, null, sourceNeeded, true, version);
    }

    GatePolicy next() {
        return ALL[(ordinal() + 1) % ALL.length];
    }
}
