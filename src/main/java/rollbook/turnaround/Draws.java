package rollbook.turnaround;

import java.util.SplittableRandom;

/**
 * The chance of one day. Each stream of numbers belongs to a purpose and to a thing or person, and its n-th number to the
 * n-th use, so that one more card or reader shifts nobody else’s numbers: two plans are compared on the same luck.
 */
@FunctionalInterface
public interface Draws {
    /** No chance at all: every delay and every amount of work is its mean, and no offload has to be repeated. */
    Draws MEANS = (purpose, entity) -> () -> Double.NaN;

    Stream stream(String purpose, String entity);

    /** The luck of one replicate: the same for the same seed and replicate, on every machine. */
    static Draws of(long seed, int replicate) {
        return (purpose, entity) -> {
            SplittableRandom numbers = new SplittableRandom(Mixing.of(seed, replicate, purpose, entity));
            return () -> ((numbers.nextLong() >>> 12) + 0.5) * 0x1p-52;
        };
    }

    /** Numbers of one purpose and entity, in the order of their use. */
    @FunctionalInterface
    interface Stream {
        /** In (0, 1), or not a number where the mean is asked for. */
        double next();

        /** Takes one number, and none where nothing varies. */
        default double factor(Spread spread) {
            if (spread instanceof Spread.None) {
                return 1;
            }
            double uniform = next();
            return Double.isNaN(uniform) ? 1 : spread.factor(uniform);
        }

        /** Takes one number, and none where there is no chance. */
        default boolean hits(double chance) {
            return chance > 0 && next() < chance;
        }
    }
}
