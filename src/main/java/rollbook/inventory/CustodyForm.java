package rollbook.inventory;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.web.Typed;

/**
 * What somebody says about an act on an item.
 *
 * @param reason why, or a note
 * @param typed the item's code, typed where the act can't be undone
 */
record CustodyForm(
        @Nullable UUID placeId,
        @Nullable String holder,
        @Nullable String reason,
        @Nullable String typed,
        @Nullable Integer version) {
    static final int MOST = 200;

    static CustodyForm of(MediaItem item) {
        return new CustodyForm(item.placeId(), item.holder(), "", "", item.version());
    }

    String holderText() {
        return Typed.text(holder);
    }

    String reasonText() {
        return Typed.text(reason);
    }

    boolean repeats(String code) {
        return typed != null && typed.strip().equalsIgnoreCase(code);
    }

    /** Whether a text can be kept as it is: short enough, and without what can't be printed. */
    static boolean keepable(String text) {
        return text.codePointCount(0, text.length()) <= MOST
                && text.replaceAll("[\r\n\t]", " ").codePoints().noneMatch(Character::isISOControl);
    }
}
