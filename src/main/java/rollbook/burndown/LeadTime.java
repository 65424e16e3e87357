package rollbook.burndown;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How many working days pass from an order to its arrival, and with which chance.
 *
 * @param chances by whole numbers of working days, at least none; they add up to one
 */
public record LeadTime(SortedMap<Integer, Double> chances) {
    private static final double ROUNDING = 1e-9;
    private static final double NINE_OF_TEN = 0.9;
    private static final double NEARLY_ALWAYS = 0.999;

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

    /**
     * As a supplier says it: usually so many working days, and nine times of ten no more than that. Days plus one are
     * taken for log-normal, whole days reckoned up; what comes once in a thousand times isn't looked at. Common
     * practice, no source.
     */
    public static LeadTime usually(int median, int nineOfTenWithin) {
        if (median < 0 || nineOfTenWithin < median) {
            throw new IllegalArgumentException(
                    "Usually %d working days, nine of ten times %d".formatted(median, nineOfTenWithin));
        }
        if (nineOfTenWithin == median) {
            return certain(median);
        }
        NormalDistribution normal = NormalDistribution.of(0, 1);
        double spread =
                Math.log((nineOfTenWithin + 1.0) / (median + 1)) / normal.inverseCumulativeProbability(NINE_OF_TEN);
        SortedMap<Integer, Double> chances = new TreeMap<>();
        double before = 0;
        for (int days = 0; before < NEARLY_ALWAYS; days++) {
            double within = within(days, median, nineOfTenWithin, normal, spread);
            double chance = (within < NEARLY_ALWAYS ? within : 1) - before;
            if (chance > 0) {
                chances.put(days, chance);
            }
            before = within;
        }
        return new LeadTime(chances);
    }

    /** Exactly a half and nine tenths where they were said, whatever the rounding. */
    private static double within(int days, int median, int nineOfTenWithin, NormalDistribution normal, double spread) {
        if (days == median) {
            return 0.5;
        }
        return days == nineOfTenWithin
                ? NINE_OF_TEN
                : normal.cumulativeProbability(Math.log((days + 1.0) / (median + 1)) / spread);
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
            if (sum + ROUNDING >= chance) {
                return entry.getKey();
            }
        }
        return chances.lastKey();
    }
}
