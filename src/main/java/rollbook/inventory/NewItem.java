package rollbook.inventory;

import java.util.UUID;
import rollbook.production.MediaKind;

/**
 * An item to be registered: in good condition, a card blank.
 *
 * @param holder who has it, in words; empty if nobody in particular
 */
public record NewItem(MediaKind kind, ItemDetails details, UUID placeId, String holder) {
    public String code() {
        return details.code();
    }

    NewItem withCode(String code) {
        return new NewItem(kind, details.withCode(code), placeId, holder);
    }
}
