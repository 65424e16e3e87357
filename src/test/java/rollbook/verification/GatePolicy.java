package rollbook.verification;

/**
 * What may be asked before a card is cleared, one demand at a time, so that no demand hides behind another.
 *
 * @param neededMedium the medium whose leg is needed to clear, or -1
 */
enum GatePolicy {
    TWO_COPIES(2, 1, 1, 1, false, -1),
    TWO_ITEMS(1, 2, 1, 1, false, -1),
    TWO_KINDS(1, 1, 2, 1, false, -1),
    TWO_PLACES(1, 1, 1, 2, false, -1),
    OFF_SITE(1, 1, 1, 1, true, -1),
    LEG(1, 1, 1, 1, false, 1);

    static final GatePolicy[] ALL = values();

    final int copies;
    final int items;
    final int kinds;
    final int places;
    final boolean offSite;
    final int neededMedium;

    GatePolicy(int copies, int items, int kinds, int places, boolean offSite, int neededMedium) {
        this.copies = copies;
        this.items = items;
        this.kinds = kinds;
        this.places = places;
        this.offSite = offSite;
        this.neededMedium = neededMedium;
    }

    GatePolicy next() {
        return ALL[(ordinal() + 1) % ALL.length];
    }
}
