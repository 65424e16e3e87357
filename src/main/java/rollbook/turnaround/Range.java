package rollbook.turnaround;

import rollbook.learning.Quantiles;

/** How a figure differs from day to day: its mean, and what one, five and nine of ten days stay below. */
public record Range(Estimate mean, double oneOfTen, double half, double nineOfTen) {
    static Range of(double[] values) {
        double[] quantiles = Quantiles.interpolated(values, 0.1, 0.5, 0.9);
        return new Range(Estimate.ofMean(values), quantiles[0], quantiles[1], quantiles[2]);
    }
}
