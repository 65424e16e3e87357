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
     * The number, from the least on, whose expected waste is smallest: packs bought that weren't needed after all,
     * against another delivery for what was lacking. This is the newsvendor's problem with a price for having too little
     * that doesn't grow with how much lacks.
     */
    long leastWaste(long least, long packPriceMinorUnits, long deliveryMinorUnits) {
        long best = least;
        double bestWaste = waste(least, packPriceMinorUnits, deliveryMinorUnits);
        for (long packs : chances.tailMap(least + 1).keySet()) {
            double waste = waste(packs, packPriceMinorUnits, deliveryMinorUnits);
            if (waste < bestWaste - ROUNDING) {
                best = packs;
                bestWaste = waste;
            }
        }
        return best;
    }

    private double waste(long packs, long packPriceMinorUnits, long deliveryMinorUnits) {
        double waste = 0;
        for (Map.Entry<Long, Double> entry : chances.entrySet()) {
            waste += entry.getValue()
                    * (entry.getKey() > packs
                            ? deliveryMinorUnits
                            : (double) packPriceMinorUnits * (packs - entry.getKey()));
        }
        return waste;
    }
}
