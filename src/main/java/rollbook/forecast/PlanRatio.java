package rollbook.forecast;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.util.List;
import rollbook.quantity.ExactDivision;

/**
 * Bytes recorded for bytes planned: sum of actual ÷ sum of planned over the wrapped days. 7/5 says that the show records
 * 1.4 times its plan. Without a wrapped day to learn from it is 1, and {@link #isPlanOnly()} says so.
 *
 * <p>Wrapped days with nothing planned have no ratio, and wrapped days with nothing recorded are more likely late data
 * than small days: both are left out of the sums and counted in {@code daysLeftOut}.
 */
public record PlanRatio(BigInteger actualBytes, BigInteger plannedBytes, int wrappedDays, int daysLeftOut) {

    static PlanRatio of(List<ForecastDay> days) {
        List<ForecastDay> wrapped = days.stream()
                .filter(day -> day.state() == ForecastDay.State.WRAPPED)
                .toList();
        List<ForecastDay> counted = wrapped.stream()
                .filter(day -> day.plannedBytes() > 0 && day.actualBytes() > 0)
                .toList();
        return new PlanRatio(
                counted.stream()
                        .map(day -> BigInteger.valueOf(day.actualBytes()))
                        .reduce(BigInteger.ZERO, BigInteger::add),
                counted.stream()
                        .map(day -> BigInteger.valueOf(day.plannedBytes()))
                        .reduce(BigInteger.ZERO, BigInteger::add),
                counted.size(),
                wrapped.size() - counted.size());
    }

    /** True if no wrapped day could be counted, so that the forecast rests on the plan alone. */
    public boolean isPlanOnly() {
        return wrappedDays == 0;
    }

    /** The ratio to 16 significant figures, for display; {@link #applyTo} is exact. */
    public BigDecimal value() {
        return isPlanOnly()
                ? BigDecimal.ONE
                : new BigDecimal(actualBytes).divide(new BigDecimal(plannedBytes), MathContext.DECIMAL64);
    }

    /** Planned bytes times the ratio, rounded up to a byte. */
    long applyTo(long bytes) {
        return isPlanOnly()
                ? bytes
                : ExactDivision.ceil(BigInteger.valueOf(bytes).multiply(actualBytes), plannedBytes);
    }
}
