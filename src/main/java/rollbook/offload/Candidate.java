package rollbook.offload;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.MediaItem;
import rollbook.production.Leg;

/**
 * A medium that a copy could be written to.
 *
 * @param freeBytes its capacity less what the copies on it take, as far as their sizes are known
 * @param inPool whether it belongs to the pool of the leg in question
 * @param holdsCopy whether a copy of the roll is on it already, which would be written over
 * @param tooLittle whether the new copy is expected not to fit
 */
record Candidate(MediaItem item, long freeBytes, boolean inPool, boolean holdsCopy, boolean tooLittle) {

    /**
     * The media of the leg's kind, those of its pool first; for no leg all that hold copies.
     *
     * @param items good ones, in the order to show them
     * @param used bytes taken on each item
     * @param holding items with a copy of the roll
     * @param neededBytes what the copy will take; null if unknown
     */
    static List<Candidate> of(
            @Nullable Leg leg,
            List<MediaItem> items,
            Map<UUID, Long> used,
            Set<UUID> holding,
            @Nullable Long neededBytes) {
        return items.stream()
                .filter(item -> leg == null ? item.kind().holdsCopies() : item.kind() == leg.mediaKind())
                .map(item -> of(leg, item, used.getOrDefault(item.id(), 0L), holding.contains(item.id()), neededBytes))
                .sorted(Comparator.comparing(candidate -> !candidate.inPool()))
                .toList();
    }

    private static Candidate of(
            @Nullable Leg leg, MediaItem item, long used, boolean holdsCopy, @Nullable Long neededBytes) {
        long capacity = item.capacityBytes() == null ? 0 : item.capacityBytes();
        long free = Math.max(0, capacity - used);
        boolean inPool = leg == null || leg.id().equals(item.legId());
        boolean tooLittle = !holdsCopy && (neededBytes == null ? free == 0 : free < neededBytes);
        return new Candidate(item, free, inPool, holdsCopy, tooLittle);
    }

    /**
     * The medium that is most likely meant: the one that the leg was written to last, else the first of its pool, in either
     * case with room. None if the leg has a copy of the roll: writing it again is for a person to decide.
     */
    static Optional<Candidate> likeliest(List<Candidate> candidates, @Nullable UUID lastItem, boolean copied) {
        if (copied) {
            return Optional.empty();
        }
        List<Candidate> withRoom = candidates.stream()
                .filter(candidate -> !candidate.tooLittle() && !candidate.holdsCopy())
                .toList();
        return withRoom.stream()
                .filter(candidate -> candidate.item().id().equals(lastItem))
                .findFirst()
                .or(() -> withRoom.stream().filter(Candidate::inPool).findFirst());
    }
}
