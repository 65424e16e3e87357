package rollbook.forecast;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.Band;
import rollbook.burndown.DayRef;
import rollbook.learning.Coverage;
import rollbook.learning.Scores;

/**
 * How earlier forecasts did: what they said of the next days, held against what was recorded on them. Of all forecasts
 * before a shooting day the last one counts, for that day, that day and the next, and so on. Beside it stand two plain guesses that needed no forecast:
 * the plan as it was, and the plan times recorded ÷ planned so far.
 */
record TrackRecord(List<Lead> leads) {
    /** With fewer of one lead it says so little that it would mislead; common sense, no source. */
    static final int ENOUGH = 10;

    private static final int[] LEADS = {1, 2, 3, 5, 10, 15, 20};
    private static final double LOW = 0.1;
    private static final double MIDDLE = 0.5;
    private static final double HIGH = 0.9;

    /**
     * Of forecasts of so many days to come, taken together.
     *
     * @param coverage how often the total lay within the 80 % band
     * @param loss average pinball loss of the 10 %, 50 % and 90 % quantiles, as a part of the planned bytes; less is
     *     better
     * @param planLoss the same if the plan had been taken as it was
     * @param ratioLoss the same if the plan had been taken times recorded ÷ planned so far
     * @param bias average ln(median ÷ recorded): 0.1 is about 10 % too high; null if a total was nothing
     */
    record Lead(
            int days,
            Coverage coverage,
            double loss,
            double planLoss,
            double ratioLoss,
            @Nullable Double bias) {
        boolean isEnough() {
            return coverage.of() >= ENOUGH;
        }
    }

    /** A forecast of some days' total, and what came of it. */
    private record Comparison(double plannedBytes, double ratioSoFar, Band forecast, double actualBytes) {
        double loss(double low, double middle, double high) {
            return (Scores.pinball(LOW, actualBytes, low)
                            + Scores.pinball(MIDDLE, actualBytes, middle)
                            + Scores.pinball(HIGH, actualBytes, high))
                    / 3
                    / plannedBytes;
        }

        double loss() {
            return loss(forecast.p10(), forecast.p50(), forecast.p90());
        }

        double lossOf(double guess) {
            return loss(guess, guess, guess);
        }

        boolean isInside() {
            return actualBytes >= forecast.p10() && actualBytes <= forecast.p90();
        }
    }

    TrackRecord {
        leads = List.copyOf(leads);
    }

    /** @param days as they are known now */
    static TrackRecord of(List<PastForecast> past, List<ForecastDay> days) {
        List<Lead> leads = new ArrayList<>();
        Collection<PastForecast> counted = lastBeforeEachDay(past);
        for (int lead : LEADS) {
            List<Comparison> comparisons = counted.stream()
                    .flatMap(forecast -> comparison(forecast, lead, days).stream())
                    .toList();
            if (!comparisons.isEmpty()) {
                leads.add(lead(lead, comparisons));
            }
        }
        return new TrackRecord(leads);
    }

    /** Those of a weekend say the same as one another, and would count twice. */
    private static Collection<PastForecast> lastBeforeEachDay(List<PastForecast> past) {
        Map<String, PastForecast> last = new LinkedHashMap<>();
        past.stream()
                .filter(forecast -> !forecast.recording().points().isEmpty())
                .sorted(Comparator.comparing(PastForecast::today))
                .forEach(forecast -> {
                    DayRef next = forecast.recording().points().get(0).day();
                    last.put(next.number() + " " + next.unit(), forecast);
                });
        return last.values();
    }

    /** Of the next day; null while there is none. */
    @Nullable
    Lead nextDay() {
        return leads.isEmpty() ? null : leads.get(0);
    }

    /** Empty until all the days are shot; a day that was cancelled says nothing about a forecast of days that are shot. */
    private static Optional<Comparison> comparison(PastForecast forecast, int lead, List<ForecastDay> days) {
        List<RecordingOutlook.Point> points = forecast.recording().points();
        if (points.size() < lead || points.get(lead - 1).plannedBytes() == 0) {
            return Optional.empty();
        }
        double actual = 0;
        for (RecordingOutlook.Point point : points.subList(0, lead)) {
            Optional<ForecastDay> shot = shot(point.day(), days);
            if (shot.isEmpty()) {
                return Optional.empty();
            }
            actual += shot.get().actualBytes();
        }
        RecordingOutlook.Point last = points.get(lead - 1);
        return Optional.of(
                new Comparison(last.plannedBytes(), ratioBefore(forecast.today(), days), last.totalBytes(), actual));
    }

    private static Optional<ForecastDay> shot(DayRef day, List<ForecastDay> days) {
        return days.stream()
                .filter(candidate -> candidate.is(day) && candidate.isShot())
                .findFirst();
    }

    private static double ratioBefore(LocalDate today, List<ForecastDay> days) {
        List<ForecastDay> shot = days.stream()
                .filter(day -> day.isShot() && day.date().isBefore(today) && day.plannedBytes() > 0)
                .toList();
        double planned = shot.stream().mapToDouble(ForecastDay::plannedBytes).sum();
        return planned == 0
                ? 1
                : shot.stream().mapToDouble(ForecastDay::actualBytes).sum() / planned;
    }

    private static Lead lead(int days, List<Comparison> comparisons) {
        int inside = (int) comparisons.stream().filter(Comparison::isInside).count();
        return new Lead(
                days,
                new Coverage(inside, comparisons.size()),
                average(comparisons.stream().mapToDouble(Comparison::loss).toArray()),
                average(comparisons.stream()
                        .mapToDouble(comparison -> comparison.lossOf(comparison.plannedBytes()))
                        .toArray()),
                average(comparisons.stream()
                        .mapToDouble(
                                comparison -> comparison.lossOf(comparison.plannedBytes() * comparison.ratioSoFar()))
                        .toArray()),
                bias(comparisons));
    }

    private static @Nullable Double bias(List<Comparison> comparisons) {
        boolean nothing = comparisons.stream()
                .anyMatch(comparison ->
                        comparison.actualBytes() <= 0 || comparison.forecast().p50() <= 0);
        return nothing
                ? null
                : average(comparisons.stream()
                        .mapToDouble(comparison -> Scores.logError(
                                comparison.actualBytes(), comparison.forecast().p50()))
                        .toArray());
    }

    private static double average(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.length;
    }
}
