package rollbook.format;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rollbook.inventory.MediaItem;

/** The usable cards of one capacity. */
record CardSize(long capacityBytes, int cards, List<String> models) {

    /** Grouped by capacity, the smallest first; cards of unknown capacity are left out. */
    static List<CardSize> of(List<MediaItem> cards) {
        Map<Long, List<MediaItem>> byCapacity = cards.stream()
                .filter(MediaItem::usable)
                .filter(card -> card.capacityBytes() != null && card.capacityBytes() > 0)
                .collect(Collectors.groupingBy(MediaItem::capacityBytes, TreeMap::new, Collectors.toList()));
        List<CardSize> sizes = new ArrayList<>();
        byCapacity.forEach((capacity, same) -> sizes.add(new CardSize(
                capacity,
                same.size(),
                same.stream().map(MediaItem::model).distinct().sorted().toList())));
        return sizes;
    }

    public String modelNames() {
        return String.join(", ", models);
    }
}
