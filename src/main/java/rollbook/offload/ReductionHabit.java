package rollbook.offload;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a show's encoding usually leaves of the bytes recorded: the median over rolls, and how far from it a roll may lie.
 * Both stand up to a few odd rolls (median absolute deviation). The figures are common practice, no source.
 *
 * @param median of encoded / recorded
 * @param tolerance three times the scaled median absolute deviation, and never less than a part of the median
 * @param rolls from which this was learned
 */
public record ReductionHabit(BigDecimal median, BigDecimal tolerance, int rolls) {
    /** Fewer are no habit. */
    private static final int ROLLS_NEEDED = 5;

    /** Makes the median absolute deviation of normal chance its standard deviation: 1 / 0.6745. */
    private static final BigDecimal SCALE = new BigDecimal("1.4826");

    private static final BigDecimal DEVIATIONS = BigDecimal.valueOf(3);

    /** Rolls that are all alike leave no deviation; a twentieth more or less is still alike. */
    private static final BigDecimal LEAST_PART = new BigDecimal("0.05");

    private static final MathContext DIGITS = MathContext.DECIMAL64;

    /** What other rolls than the one in question tell; empty if they are too few. */
    public static Optional<ReductionHabit> of(List<Encoding> others) {
        if (others.size() < ROLLS_NEEDED) {
            return Optional.empty();
        }
        BigDecimal median = median(others.stream().map(ReductionHabit::share));
        BigDecimal deviation =
                median(others.stream().map(one -> share(one).subtract(median).abs()));
        BigDecimal tolerance =
                DEVIATIONS.multiply(SCALE).multiply(deviation, DIGITS).max(LEAST_PART.multiply(median, DIGITS));
        return Optional.of(new ReductionHabit(median, tolerance, others.size()));
    }

    public boolean isFarFrom(Encoding roll) {
        return share(roll).subtract(median).abs().compareTo(tolerance) > 0;
    }

    /** Encoded / recorded, to 16 significant figures. */
    public static BigDecimal share(Encoding roll) {
        return BigDecimal.valueOf(roll.encodedBytes()).divide(BigDecimal.valueOf(roll.recordedBytes()), DIGITS);
    }

    private static BigDecimal median(Stream<BigDecimal> values) {
        List<BigDecimal> sorted = values.sorted(Comparator.naturalOrder()).toList();
        BigDecimal low = sorted.get((sorted.size() - 1) / 2);
        BigDecimal high = sorted.get(sorted.size() / 2);
        return low.add(high).divide(BigDecimal.valueOf(2), DIGITS);
    }
}
