package rollbook.inventory;

import org.jspecify.annotations.Nullable;

/** An item on a list, with the name of the leg it serves. */
record ItemRow(MediaItem item, @Nullable String legName) {
    ItemState state() {
        return ItemState.of(item);
    }

    public String stateKey() {
        return item.stateKey();
    }

    /** Good, but at a place away from the set and the office. */
    public boolean away() {
        return item.usable() && item.offSite();
    }
}
