package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;

/**
 * A figure of simulated days beside that of a closed form.
 *
 * @param deviation standard deviation of the simulated figure
 */
record Compared(String figure, double expected, double simulated, double deviation) {
    private static final double MOST_DEVIATIONS = 4;

    /** The mean of independent days; its standard deviation is estimated from how they differ. */
    static Compared ofDays(String figure, double expected, double... days) {
        double mean = Arrays.stream(days).average().orElseThrow();
        double squares =
                Arrays.stream(days).map(day -> (day - mean) * (day - mean)).sum();
        return new Compared(figure, expected, mean, Math.sqrt(squares / (days.length - 1) / days.length));
    }

    static void assertAllAgree(List<Compared> figures) {
        assertThat(figures).isNotEmpty().allMatch(Compared::agrees);
    }

    boolean agrees() {
        return Math.abs(off()) <= MOST_DEVIATIONS;
    }

    /** In standard deviations. */
    double off() {
        return (simulated - expected) / deviation;
    }
}
