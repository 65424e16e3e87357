package rollbook.ordering;

import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.PoolPaths;

/**
 * How likely a pool has run out by a date if nothing more is ordered, and what lacks by then.
 *
 * <p>What runs out before an order placed now could come, and has enough afterwards because something else comes, can't be
 * mended by ordering. Such a course of the show is told as a risk, and isn't one to order against.
 */
final class RunOutChances {
    private final PoolPaths paths;
    private final List<LocalDate> dates;
    private final int firstMended;
    private final double[] byDate;
    private final double[] mendableByDate;

    /** @param firstArrival the date on which an order placed now would come; it helps from the next date on */
    RunOutChances(PoolPaths paths, LocalDate firstArrival) {
        this.paths = paths;
        this.dates = paths.dates();
        this.firstMended = indexOf(firstArrival) + 1;
        this.byDate = new double[dates.size()];
        this.mendableByDate = new double[dates.size()];
        double one = 1.0 / paths.replicates();
        for (int replicate = 0; replicate < paths.replicates(); replicate++) {
            int runOut = runOut(replicate);
            if (runOut < dates.size()) {
                byDate[runOut] += one;
                if (worst(replicate, dates.size() - 1) > 0) {
                    mendableByDate[runOut] += one;
                }
            }
        }
        for (int date = 1; date < byDate.length; date++) {
            byDate[date] += byDate[date - 1];
            mendableByDate[date] += mendableByDate[date - 1];
        }
    }

    private int runOut(int replicate) {
        int date = 0;
        while (date < dates.size() && paths.shortfallBytes(date, replicate) == 0) {
            date++;
        }
        return date;
    }

    /** What lacks at most up to this date, of what an order placed now could mend. */
    private long worst(int replicate, int lastIndex) {
        long worst = 0;
        for (int date = firstMended; date <= lastIndex; date++) {
            worst = Math.max(worst, paths.shortfallBytes(date, replicate));
        }
        return worst;
    }

    LocalDate lastDate() {
        return dates.get(dates.size() - 1);
    }

    /** That the pool has run out at the end of that date. */
    double by(LocalDate date) {
        return at(byDate, date);
    }

    /** The same, of what an order placed now can still mend. */
    double mendableBy(LocalDate date) {
        return at(mendableByDate, date);
    }

    private double at(double[] chances, LocalDate date) {
        int index = indexOf(date);
        return index < 0 ? 0 : chances[index];
    }

    /** That it has run out by the end of the date on which an order of that day arrives; until then it doesn't help. */
    double beforeArrival(LocalDate orderOn, Supplier supplier) {
        return overLeadTimes(orderOn, supplier, this::by);
    }

    /** The same, of what an order placed now can still mend. */
    double mendableBeforeArrival(LocalDate orderOn, Supplier supplier) {
        return overLeadTimes(orderOn, supplier, this::mendableBy);
    }

    private static double overLeadTimes(LocalDate orderOn, Supplier supplier, ToDoubleFunction<LocalDate> chance) {
        double sum = 0;
        for (Map.Entry<Integer, Double> lead : supplier.leadTime().chances().entrySet()) {
            sum += lead.getValue() * chance.applyAsDouble(supplier.days().arrival(orderOn, lead.getKey()));
        }
        return sum;
    }

    /** The first date by which it has run out with at least this chance. */
    @Nullable
    LocalDate firstDateWith(double chance) {
        for (int date = 0; date < byDate.length; date++) {
            if (byDate[date] >= chance) {
                return dates.get(date);
            }
        }
        return null;
    }

    /** Packs that have to be added so that all of the show is written. */
    PackNeed needToTheEnd(long packBytes) {
        PackNeed need = new PackNeed();
        addNeed(need, dates.size() - 1, 1, packBytes);
        return need;
    }

    /** Packs that have to be added so that everything is written up to the arrival of an order of that day. */
    PackNeed needUntilArrival(LocalDate orderOn, Supplier supplier, long packBytes) {
        SortedMap<Integer, Double> byIndex = new TreeMap<>();
        for (Map.Entry<Integer, Double> lead : supplier.leadTime().chances().entrySet()) {
            byIndex.merge(indexOf(supplier.days().arrival(orderOn, lead.getKey())), lead.getValue(), Double::sum);
        }
        PackNeed need = new PackNeed();
        byIndex.forEach((index, chance) -> addNeed(need, index, chance, packBytes));
        return need;
    }

    private void addNeed(PackNeed need, int lastIndex, double chance, long packBytes) {
        for (int replicate = 0; replicate < paths.replicates(); replicate++) {
            need.add(-Math.floorDiv(-worst(replicate, lastIndex), packBytes), chance / paths.replicates());
        }
    }

    /** The last of the paths' dates that isn't after this one, -1 if all are. */
    private int indexOf(LocalDate date) {
        int found = Collections.binarySearch(dates, date);
        return found >= 0 ? found : -found - 2;
    }
}
