package rollbook.burndown;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How many working days pass from an order to its arrival, and with which chance.
 *
 * @param chances by whole numbers of working days, at least none; they add up to one
 */
public record LeadTime(SortedMap<Integer, Double> chances) {
    private static final double ROUNDING = 1e-9;

    public LeadTime {
        double sum = 0;
        for (Map.Entry<Integer, Double> entry : chances.entrySet()) {
            if (entry.getKey() < 0 || !(entry.getValue() > 0)) {
                throw new IllegalArgumentException("Days below zero or a chance not above it: " + chances);
            }
            sum += entry.getValue();
        }
        if (Math.abs(sum - 1) > ROUNDING) {
            throw new IllegalArgumentException("Chances that add up to %s: %s".formatted(sum, chances));
        }
        chances = Collections.unmodifiableSortedMap(new TreeMap<>(chances));
    }

    public static LeadTime of(SortedMap<Integer, Double> chances) {
        return new LeadTime(chances);
    }

    public static LeadTime certain(int workingDays) {
        return new LeadTime(new TreeMap<>(Map.of(workingDays, 1.0)));
    }

    /** As a supplier would say it: usually so many working days, and nine times of ten no more than that. */
    public static LeadTime usually(int median, int nineOfTenWithin) {
        throw new UnsupportedOperationException();
    }

    /**
     * The smallest number of working days within which it comes with at least this chance.
     *
     * @param chance from zero to one; drawn evenly from between them it gives a lead time drawn by its chances
     */
    public int days(double chance) {
        double sum = 0;
        for (Map.Entry<Integer, Double> entry : chances.entrySet()) {
            sum += entry.getValue();
            if (sum >= chance) {
                return entry.getKey();
            }
        }
        return chances.lastKey();
    }
}
