package rollbook.learning;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Possible futures of a show: for each day to come and each replicate a factor on the day’s planned bytes. A
 * replicate has one level and one spread for each unit, drawn once and shared by all its days (the level wanders on
 * from there): drawing them anew each day would let the days’ errors cancel, and the band of a sum would come out far
 * too narrow.
 *
 * <p>Not for use by several threads at once.
 */
public final class RatioPaths {
    /** No day brings more than so many times its plan; the tails of the belief know no bound. */
    public static final double MOST = 10;

    private static final String SHOW = "";

    private final Learned learned;
    private final Streams streams;
    private final int replicates;
    private final double[] showLevels;
    private final double[] zeroChances;
    private final Map<String, UnitPaths> units = new HashMap<>();

    /** Of one unit: levels by step of the wandering and replicate, spreads by replicate. */
    private record UnitPaths(LearnedUnit learned, List<double[]> levels, double[] spreads) {}

    private RatioPaths(Learned learned, long seed, int replicates) {
        this.learned = learned;
        this.streams = new Streams(seed);
        this.replicates = replicates;
        this.showLevels = streams.normals(replicates, "level", SHOW);
        this.zeroChances = learned.habits().zeroDays() ? zeroChances() : new double[0];
    }

    public static RatioPaths of(Learned learned, long seed, int replicates) {
        return new RatioPaths(learned, seed, replicates);
    }

    /** A new array, one factor for each replicate; 0 on a day that brings nothing. */
    public double[] factors(String unit, int dayNumber) {
        UnitPaths paths = units.computeIfAbsent(unit, this::paths);
        double[] levels = levels(paths, Wander.stepsBy(dayNumber - paths.learned.lastDayNumber()));
        double[] factors = streams.normals(replicates, "noise", unit, dayNumber);
        for (int i = 0; i < replicates; i++) {
            factors[i] = Math.min(MOST, Math.exp(levels[i] + paths.spreads[i] * factors[i]));
        }
        if (zeroChances.length > 0) {
            double[] hurdles = streams.uniforms(replicates, "hurdle", unit, dayNumber);
            for (int i = 0; i < replicates; i++) {
                factors[i] = hurdles[i] < zeroChances[i] ? 0 : factors[i];
            }
        }
        return factors;
    }

    /** Units have in common what they borrowed from elsewhere; for the rest each has a level of its own. */
    private UnitPaths paths(String unit) {
        LearnedUnit known = learned.unit(unit);
        double common = Math.sqrt(known.borrowed());
        double own = Math.sqrt(1 - known.borrowed());
        double[] spreads = known.belief().spreads(streams.uniforms(replicates, "spread", unit));
        double[] levels = streams.normals(replicates, "level", unit);
        for (int i = 0; i < replicates; i++) {
            levels[i] = known.belief().level(spreads[i], common * showLevels[i] + own * levels[i]);
        }
        return new UnitPaths(known, new ArrayList<>(List.of(levels)), spreads);
    }

    private double[] levels(UnitPaths paths, int steps) {
        double step = paths.learned.wander().step();
        if (step == 0) {
            return paths.levels.get(0);
        }
        for (int taken = paths.levels.size(); taken <= steps; taken++) {
            double[] before = paths.levels.get(taken - 1);
            double[] levels = streams.normals(replicates, "wander", paths.learned.unit(), taken);
            for (int i = 0; i < replicates; i++) {
                levels[i] = before[i] + step * paths.spreads[i] * levels[i];
            }
            paths.levels.add(levels);
        }
        return paths.levels.get(steps);
    }

    private double[] zeroChances() {
        double[] chances = streams.uniforms(replicates, "hurdle", SHOW);
        for (int i = 0; i < replicates; i++) {
            chances[i] = learned.zeroDays().quantile(chances[i]);
        }
        return chances;
    }
}
