package rollbook.forecast;

import java.time.LocalTime;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.MediaItem;
import rollbook.inventory.Ownership;
import rollbook.production.MediaKind;

/** What a form about a pool's supply begins with: judged by what the pool has already, else common practice, no source. */
final class LikelySupply {
    /** Delivery within a working week, two days of slack. */
    static final LegSupply.Source SOURCE =
            new LegSupply.Source("", 5, 7, null, LocalTime.of(16, 0), DeliveredTo.OFFICE, 0);

    private LikelySupply() {}

    /** The item's price is zero if nothing tells it. */
    static LegSupply of(UUID legId, MediaKind kind, List<MediaItem> pool) {
        List<MediaItem> bought = pool.stream()
                .filter(item -> item.ownership() == Ownership.BOUGHT)
                .toList();
        return new LegSupply(
                legId,
                Objects.requireNonNullElse(commonest(pool, MediaItem::capacityBytes), usualCapacityBytes(kind)),
                1,
                Objects.requireNonNullElse(commonest(bought, MediaItem::costMinorUnits), 0L),
                SOURCE,
                null,
                LegSupply.NOT_KEPT);
    }

    /** What a new item of the kind may hold; a tape as LTO-9 defines it, the others common practice, no source. */
    private static long usualCapacityBytes(MediaKind kind) {
        return kind == MediaKind.TAPE ? 18_000_000_000_000L : 4_000_000_000_000L;
    }

    private static @Nullable Long commonest(List<MediaItem> pool, Function<MediaItem, @Nullable Long> figure) {
        return pool.stream()
                .map(figure)
                .filter(Objects::nonNull)
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()))
                .entrySet()
                .stream()
                .max(Map.Entry.<Long, Long>comparingByValue()
                        .thenComparing(Map.Entry::getKey, Comparator.naturalOrder()))
                .map(Map.Entry::getKey)
                .orElse(null);
    }
}
