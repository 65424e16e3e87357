package rollbook.ordering;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import rollbook.burndown.LeadTime;

/**
 * What past deliveries teach about a supplier's lead time. What the supplier states counts as much as five deliveries
 * would: of few deliveries little is learned, of many nearly all.
 *
 * @param stated the lead time before anything was delivered
 * @param deliveredAfter working days that each past delivery took
 */
public record LearnedLeadTime(LeadTime stated, List<Integer> deliveredAfter) {
    /** A choice of our own: after five deliveries half is learned. */
    private static final double STATED_WEIGHT = 5;

    private static final double HALF = 0.5;
    private static final double NINE_OF_TEN = 0.9;

    public LearnedLeadTime {
        deliveredAfter = deliveredAfter.stream().sorted().toList();
    }

    /**
     * Chance of d days = (weight × stated chance of d + deliveries after d days) / (weight + deliveries): what is expected
     * next under a Dirichlet process about the stated chances (Ferguson 1973, as quoted in textbooks).
     */
    public LeadTime leadTime() {
        if (deliveredAfter.isEmpty()) {
            return stated;
        }
        double weights = STATED_WEIGHT + deliveredAfter.size();
        SortedMap<Integer, Double> chances = new TreeMap<>();
        stated.chances().forEach((days, chance) -> chances.put(days, STATED_WEIGHT * chance / weights));
        deliveredAfter.forEach(days -> chances.merge(days, 1 / weights, Double::sum));
        return new LeadTime(chances);
    }

    /** Half of all deliveries take no longer, in working days. */
    public int usualWorkingDays() {
        return leadTime().days(HALF);
    }

    /** Nine deliveries of ten take no longer, in working days. */
    public int slowWorkingDays() {
        return leadTime().days(NINE_OF_TEN);
    }
}
