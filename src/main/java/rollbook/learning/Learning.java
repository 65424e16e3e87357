package rollbook.learning;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import rollbook.learning.LearnedUnit.Apart;

/**
 * From wrapped days to a belief for each unit. What all other units taught is the prior of a unit, but worth no more
 * than four days; then its own days count. The caps are a design of our own, tried on generated shows.
 */
public final class Learning {
    /** What other units taught is worth no more days than this. */
    private static final double MOST_DAYS_BORROWED = 4;

    /** Nor does it make the spread surer than this, half the degrees of freedom. */
    private static final double MOST_SURE_OF_SPREAD = 2;

    /**
     * Parts of the prior's spread that minutes and bytes per minute have when learned apart. Minutes vary more. Their
     * product has nearly the prior predictive of bytes: found by numerical integration.
     */
    private static final double SPREAD_OF_MINUTES = 0.8;

    private static final double SPREAD_OF_BYTES_PER_MINUTE = 0.14;

    private final Habits habits;
    private final SortedMap<String, UnitDays> units = new TreeMap<>();

    private Learning(List<ShotDay> days, Habits habits) {
        this.habits = habits;
        SortedMap<String, List<ShotDay>> byUnit = new TreeMap<>();
        days.forEach(day ->
                byUnit.computeIfAbsent(day.unit(), unit -> new ArrayList<>()).add(day));
        byUnit.forEach((unit, own) -> units.put(unit, UnitDays.of(own)));
    }

    /** The order of the days in the list doesn't matter. */
    public static Learned from(List<ShotDay> days, Habits habits) {
        Learning learning = new Learning(days, habits);
        List<LearnedUnit> learned =
                learning.units.keySet().stream().map(learning::unit).toList();
        return new Learned(
                habits, learned, learning.prior("", habits.prior(), UnitDays.Day::logRatio), learning.zeroDays());
    }

    private LearnedUnit unit(String name) {
        UnitDays own = own(name);
        Belief prior = prior(name, habits.prior(), UnitDays.Day::logRatio);
        Belief belief = updated(prior, own, UnitDays.Day::logRatio);
        return new LearnedUnit(
                name,
                belief,
                habits.wander(),
                own.lastDayNumber(),
                prior.k() / belief.k(),
                isTaughtByOthers(name),
                own.days().size(),
                belief.k() - prior.k(),
                own.unplannedBytesPerDay(),
                apart(name),
                own.remarks());
    }

    private UnitDays own(String name) {
        UnitDays own = units.get(name);
        if (own == null) {
            throw new IllegalArgumentException("No days of unit " + name);
        }
        return own;
    }

    private boolean isTaughtByOthers(String name) {
        return units.entrySet().stream()
                .anyMatch(other ->
                        !other.getKey().equals(name) && !other.getValue().days().isEmpty());
    }

    /** What is believed of a unit before its own days count. */
    private Belief prior(String name, Belief base, ToDoubleFunction<UnitDays.Day> learnedFrom) {
        if (!isTaughtByOthers(name)) {
            return base;
        }
        Belief belief = base;
        for (var other : units.entrySet()) {
            if (!other.getKey().equals(name)) {
                belief = updated(belief, other.getValue(), learnedFrom);
            }
        }
        return belief.worthAtMost(MOST_DAYS_BORROWED, MOST_SURE_OF_SPREAD);
    }

    private Belief updated(Belief belief, UnitDays unit, ToDoubleFunction<UnitDays.Day> learnedFrom) {
        List<UnitDays.Day> days = unit.days();
        double[] logRatios = days.stream().mapToDouble(learnedFrom).toArray();
        double[] weights = new double[logRatios.length];
        for (int i = 0; i < weights.length; i++) {
            weights[i] = habits.weight(weights.length - 1 - i);
        }
        return belief.updated(logRatios, weights);
    }

    /** What is believed of minutes and of bytes per minute before any day, so that their product fits the prior. */
    static Apart partsOf(Belief prior) {
        return new Apart(
                new Belief(prior.k(), prior.mu(), prior.a(), prior.b() * SPREAD_OF_MINUTES),
                new Belief(prior.k(), 0, prior.a(), prior.b() * SPREAD_OF_BYTES_PER_MINUTE));
    }

    private @Nullable Apart apart(String name) {
        UnitDays own = own(name);
        if (own.days().isEmpty() || !units.values().stream().allMatch(UnitDays::haveMinutes)) {
            return null;
        }
        Apart parts = partsOf(habits.prior());
        return new Apart(
                updated(prior(name, parts.minutes(), UnitDays.Day::logMinutes), own, UnitDays.Day::logMinutes),
                updated(
                        prior(name, parts.bytesPerMinute(), UnitDays.Day::logBytesPerMinute),
                        own,
                        UnitDays.Day::logBytesPerMinute));
    }

    private ZeroDays zeroDays() {
        ZeroDays belief = ZeroDays.PRIOR;
        for (UnitDays unit : units.values()) {
            belief = belief.plus(unit.zeroDays(), unit.days().size());
        }
        return belief;
    }
}
