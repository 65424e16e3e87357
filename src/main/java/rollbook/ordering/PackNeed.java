package rollbook.ordering;

import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/** How many packs are needed, with which chance. */
final class PackNeed {
    /** Sums of chances that should be equal may differ by this much. */
    private static final double ROUNDING = 1e-9;

    private final SortedMap<Long, Double> chances = new TreeMap<>();

    void add(long packs, double chance) {
        chances.merge(packs, chance, Double::sum);
    }

    /** The fewest packs that are too few with no more than this chance. */
    long fewestWithin(double risk) {
        double atMost = 0;
        for (Map.Entry<Long, Double> entry : chances.entrySet()) {
            atMost += entry.getValue();
            if (atMost >= 1 - risk - ROUNDING) {
                return entry.getKey();
            }
        }
        return chances.lastKey();
    }

    double chanceOfMoreThan(long packs) {
        return chances.tailMap(packs + 1).values().stream()
                .mapToDouble(Double::doubleValue)
                .sum();
    }

    /**
     * As many as cost less than what they may save: a pack that isn't needed after all is its price lost, one that is
     * needed saves a delivery later on, at most. This is the newsvendor's number, the fewest packs that are too few with no
     * more than the chance of price / (price + delivery).
     */
    long worthTheirPrice(long packPriceMinorUnits, long deliveryMinorUnits) {
        return packPriceMinorUnits == 0
                ? chances.lastKey()
                : fewestWithin((double) packPriceMinorUnits / ((double) packPriceMinorUnits + deliveryMinorUnits));
    }
}
