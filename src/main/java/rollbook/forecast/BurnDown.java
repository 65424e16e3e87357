package rollbook.forecast;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.DayRef;
import rollbook.burndown.PoolOutlook;
import rollbook.quantity.Share;

/**
 * A pool's bytes by date, for a chart and its table: what was, and what a forecast says will be. Bytes are as written on
 * this leg.
 *
 * @param points one per date with a shooting day or a change of the pool, and today; by date
 */
record BurnDown(LocalDate today, LocalDate endOfShow, PoolOutlook pool, List<Point> points) {

    /**
     * A date.
     *
     * @param days shot or to be shot on it, without cancelled ones
     * @param pastLeftBytes left at the end of a past date; null if no forecast of that time told it
     * @param outlook from today on; null before
     */
    record Point(
            LocalDate date,
            List<DayRef> days,
            long plannedBytes,
            long actualBytes,
            @Nullable Long pastLeftBytes,
            PoolOutlook.@Nullable Point outlook) {}

    BurnDown {
        points = List.copyOf(points);
    }

    /** @param roomOnPastDates at the end of the date, as the forecasts of then told it */
    static BurnDown of(ForecastInput input, LegForecast leg, Map<LocalDate, Long> roomOnPastDates) {
        Share kept = input.legs().stream()
                .filter(known -> known.id().equals(leg.legId()))
                .map(known -> known.pool().kept().usual())
                .findFirst()
                .orElse(Share.WHOLE);
        Map<LocalDate, List<ForecastDay>> days = input.days().stream()
                .filter(day -> day.state() != ForecastDay.State.CANCELLED)
                .collect(Collectors.groupingBy(ForecastDay::date));
        List<Point> points = new ArrayList<>();
        days.keySet().stream()
                .filter(date -> date.isBefore(input.today()))
                .sorted()
                .map(date -> point(date, days.get(date), kept, roomOnPastDates.get(date), null))
                .forEach(points::add);
        leg.outlook().points().stream()
                .map(point -> point(point.date(), days.getOrDefault(point.date(), List.of()), kept, null, point))
                .forEach(points::add);
        return new BurnDown(input.today(), input.endOfShow(), leg.outlook(), points);
    }

    private static Point point(
            LocalDate date,
            List<ForecastDay> days,
            Share kept,
            @Nullable Long pastLeft,
            PoolOutlook.@Nullable Point outlook) {
        return new Point(
                date,
                days.stream().map(ForecastDay::ref).toList(),
                days.stream().mapToLong(day -> kept.ceilOf(day.plannedBytes())).reduce(0, Math::addExact),
                days.stream().mapToLong(day -> kept.ceilOf(day.actualBytes())).reduce(0, Math::addExact),
                pastLeft,
                outlook);
    }

    /** Those from today on. */
    Stream<PoolOutlook.Point> coming() {
        return points.stream().flatMap(point -> Stream.ofNullable(point.outlook()));
    }
}
