package rollbook.burndown;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * When media on order come. What hasn't come before today comes today at the earliest, and the dates that are still
 * possible keep their chances among each other. If all of them have passed it is counted as coming today.
 */
final class ArrivalDates {
    private static final double NINE_OF_TEN = 0.9;

    private final SortedMap<LocalDate, Double> chances = new TreeMap<>();
    private final boolean overdue;

    ArrivalDates(Pool.Arrival arrival, LocalDate today) {
        arrival.leadTime().chances().forEach((days, chance) -> {
            LocalDate date = arrival.calendar().plus(arrival.orderedOn(), days);
            if (!date.isBefore(today)) {
                chances.merge(date, chance, Double::sum);
            }
        });
        if (chances.isEmpty()) {
            chances.put(today, 1.0);
        }
        double all = chances.values().stream().mapToDouble(Double::doubleValue).sum();
        chances.replaceAll((date, chance) -> chance / all);
        overdue = arrival.calendar()
                .plus(arrival.orderedOn(), arrival.leadTime().days(NINE_OF_TEN))
                .isBefore(today);
    }

    /** Nine times of ten it would have come before today. */
    boolean overdue() {
        return overdue;
    }

    LocalDate usual() {
        return by(0.5);
    }

    /** The first date by which it has come with this chance. */
    LocalDate by(double chance) {
        double sum = 0;
        for (LocalDate date : chances.keySet()) {
            sum += chances.get(date);
            if (sum >= chance) {
                return date;
            }
        }
        return chances.lastKey();
    }

    /**
     * For each uniform number, the index of the first of the dates that finds the items there: the one after they come.
     * One beyond the dates if they come on the last, two if they come after it.
     */
    int[] usableFrom(double[] uniforms, List<LocalDate> dates) {
        LocalDate[] possible = chances.keySet().toArray(LocalDate[]::new);
        double[] until = new double[possible.length];
        int[] from = new int[possible.length];
        double sum = 0;
        for (int i = 0; i < possible.length; i++) {
            sum += chances.get(possible[i]);
            until[i] = i == possible.length - 1 ? 1 : sum;
            from[i] = firstAfter(possible[i], dates);
        }
        int[] usableFrom = new int[uniforms.length];
        for (int r = 0; r < uniforms.length; r++) {
            int i = 0;
            while (until[i] < uniforms[r]) {
                i++;
            }
            usableFrom[r] = from[i];
        }
        return usableFrom;
    }

    private static int firstAfter(LocalDate date, List<LocalDate> dates) {
        if (date.isAfter(dates.get(dates.size() - 1))) {
            return dates.size() + 1;
        }
        int found = Collections.binarySearch(dates, date);
        return found >= 0 ? found + 1 : -found - 1;
    }
}
