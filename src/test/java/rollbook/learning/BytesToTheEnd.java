package rollbook.learning;

import java.time.LocalDate;

/** A show's bytes from an evening to its end, as forecast then and as they came. */
record BytesToTheEnd(double[] replicates, long actual) {

    static BytesToTheEnd of(GeneratedShow show, LocalDate evening, Habits habits, int replicates) {
        RatioPaths paths = RatioPaths.of(Learning.from(show.wrappedBy(evening), habits), show.seed(), replicates);
        double[] totals = new double[replicates];
        for (GeneratedShow.Day day : show.plannedAfter(evening)) {
            double[] factors = paths.factors(day.unit(), day.number());
            for (int i = 0; i < replicates; i++) {
                totals[i] += day.plannedBytes() * factors[i];
            }
        }
        return new BytesToTheEnd(totals, show.bytesAfter(evening));
    }

    double quantile(double chance) {
        return Quantiles.interpolated(replicates, chance);
    }

    boolean liesIn80PercentBand() {
        return actual >= quantile(0.1) && actual <= quantile(0.9);
    }
}
