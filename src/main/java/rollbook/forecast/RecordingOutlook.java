package rollbook.forecast;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.Band;
import rollbook.burndown.DayRef;
import rollbook.burndown.DayToCome;
import rollbook.burndown.Show;
import rollbook.learning.Learned;
import rollbook.learning.Quantiles;
import rollbook.learning.RatioPaths;

/** How much the show will record: what a forecast can be held to afterwards, whatever became of its media. */
record RecordingOutlook(List<Point> points) {
    /**
     * @param plannedBytes of this day and those before it in the list
     * @param totalBytes recorded on the same days, whole days
     * @param dayBytes recorded on this day alone, the whole day; null in forecasts that were kept before it was told
     */
    record Point(
            DayRef day,
            long plannedBytes,
            Band totalBytes,
            @Nullable Band dayBytes) {}

    RecordingOutlook {
        points = List.copyOf(points);
    }

    static RecordingOutlook of(Show show, Learned learned, long seed, int replicates) {
        RatioPaths paths = RatioPaths.of(learned, seed, replicates);
        double[] totals = new double[replicates];
        long planned = 0;
        List<Point> points = new ArrayList<>();
        for (DayToCome day : show.days()) {
            double[] factors = paths.factors(day.day().unit(), day.day().number());
            double[] alone = new double[replicates];
            for (int i = 0; i < replicates; i++) {
                alone[i] = Math.max(day.recordedBytes(), factors[i] * day.plannedBytes());
                totals[i] += alone[i];
            }
            planned = Math.addExact(planned, day.plannedBytes());
            points.add(new Point(day.day(), planned, band(totals), band(alone)));
        }
        return new RecordingOutlook(points);
    }

    private static Band band(double[] totals) {
        double[] quantiles = Quantiles.interpolated(totals, 0.1, 0.25, 0.5, 0.75, 0.9);
        return new Band(
                Math.round(quantiles[0]),
                Math.round(quantiles[1]),
                Math.round(quantiles[2]),
                Math.round(quantiles[3]),
                Math.round(quantiles[4]));
    }
}
