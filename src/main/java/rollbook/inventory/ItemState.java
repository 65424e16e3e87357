package rollbook.inventory;

import java.util.Locale;

/** One word for how an item stands: its condition if that isn't good, else a card's state, else good. */
enum ItemState {
    BLANK,
    IN_CAMERA,
    EXPOSED,
    COPYING,
    HELD,
    CLEAR_TO_ERASE,
    GOOD,
    QUARANTINED,
    LOST,
    RETIRED,
    RETURNED;

    static ItemState of(MediaItem item) {
        if (item.condition() != Condition.GOOD) {
            return valueOf(item.condition().name());
        }
        return item.cardState() == null ? GOOD : valueOf(item.cardState().name());
    }

    /** The message that words it: those of cards are the portal's, the others this module's. */
    String key() {
        return isWordedByPortal() ? "web.card-state." + name() : "inventory.state." + name();
    }

    /** The word for files, which stays the same whatever language the pages speak. */
    String plainWord() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private boolean isWordedByPortal() {
        return compareTo(GOOD) < 0 || this == QUARANTINED;
    }
}
