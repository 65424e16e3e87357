package rollbook.verification;

import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.Condition;
import rollbook.manifest.Verdict;
import rollbook.production.Rendition;

/**
 * Where a roll is now: its card and its copies, and what is proven of them.
 *
 * @param sizeBytes as recorded; null if nobody knows
 * @param cardManifests SHA-256 of the documents of the card itself, in hexadecimal
 * @param copies those that are there, not those on media that were erased since
 */
public record RollCopies(
        UUID rollId,
        String rollCode,
        @Nullable Long sizeBytes,
        UUID cardId,
        String cardCode,
        Card card,
        List<String> cardManifests,
        List<CopyAt> copies) {

    /** What became of the card that the roll was recorded on. */
    public enum Card {
        HOLDS_ROLL,
        /** It still holds the roll, and somebody may erase it. */
        CLEARED,
        /** It still holds the roll, but nobody knows where it is. */
        LOST,
        /** It was erased, or holds another roll by now. */
        ERASED
    }

    /**
     * @param sizeBytes of this rendition; null if nobody knows
     * @param proven whatever the clearing policy says, on a medium in good condition, its encoding proven too
     * @param manifests SHA-256 of the documents that speak for it, in hexadecimal
     */
    public record CopyAt(
            UUID itemId,
            String itemCode,
            String placeName,
            boolean offSite,
            Condition condition,
            Rendition rendition,
            @Nullable Long sizeBytes,
            Verdict verdict,
            boolean proven,
            List<String> manifests) {}

    /** Whether the card still holds the roll, and isn't one of the items. */
    public boolean isOnCardOtherThan(Set<UUID> items) {
        return (card == Card.HOLDS_ROLL || card == Card.CLEARED) && !items.contains(cardId);
    }

    /** Whether one of the items is the card, with the roll still on it. */
    public boolean isOnCardAmong(Set<UUID> items) {
        return card != Card.ERASED && items.contains(cardId);
    }

    public List<CopyAt> on(Collection<UUID> items) {
        return copies.stream().filter(copy -> items.contains(copy.itemId())).toList();
    }

    public List<CopyAt> provenOn(Collection<UUID> items) {
        return on(items).stream().filter(CopyAt::proven).toList();
    }

    public List<CopyAt> provenElsewhere(Collection<UUID> items) {
        return copies.stream()
                .filter(copy -> copy.proven() && !items.contains(copy.itemId()))
                .toList();
    }
}
