package rollbook.forecast;

import java.math.BigInteger;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.ordering.PurchasePlan;

/**
 * What the newest forecast says about money: what would still have to be ordered to the end of the show, at today's prices.
 *
 * @param computedAt when the forecast came out like this
 * @param lines packs of an offer
 * @param deliveriesMinorUnits of all those orders together
 * @param complete whether nothing is lacking in it: false if a pool may run out and too little is offered for it
 * @param withoutHireMinorUnits what it would come to if nothing were hired; null if nothing is anyway
 * @param recordedBytes until then, each roll once
 * @param wrappedDays until then
 * @param bytesToCome as likely more as less
 * @param daysToCome that aren't wrapped
 */
public record CostToCome(
        Instant computedAt,
        List<Line> lines,
        long deliveriesMinorUnits,
        boolean complete,
        @Nullable Long withoutHireMinorUnits,
        BigInteger recordedBytes,
        int wrappedDays,
        BigInteger bytesToCome,
        int daysToCome) {

    /**
     * @param hired until the end of the show; else bought
     * @param minorUnits in the currency's smallest unit, without the delivery
     */
    public record Line(UUID legId, String legName, boolean hired, long items, long minorUnits) {}

    static CostToCome of(ForecastRun run) {
        StorageForecast forecast = run.results();
        PurchasePlan plan = forecast.plan();
        List<Line> lines = plan == null
                ? List.of()
                : plan.lines().stream()
                        .map(line -> new Line(
                                line.offer().poolId(),
                                line.offer().name(),
                                line.hired(),
                                line.packs() * line.offer().packSize(),
                                line.costMinorUnits()))
                        .toList();
        List<ForecastDay> days = run.inputs().days();
        long recordedTodayBytes =
                bytes(days.stream().filter(ForecastDay::isStillToCome).toList()).longValueExact();
        List<RecordingOutlook.Point> points = forecast.recording().points();
        long restBytes = points.isEmpty()
                ? 0
                : points.get(points.size() - 1).totalBytes().p50() - recordedTodayBytes;
        return new CostToCome(
                run.computedAt(),
                lines,
                plan == null
                        ? 0
                        : plan.costMinorUnits()
                                - lines.stream().mapToLong(Line::minorUnits).sum(),
                isComplete(forecast),
                forecast.costWithoutHireMinorUnits(),
                bytes(days),
                (int) days.stream()
                        .filter(day -> day.state() == ForecastDay.State.WRAPPED)
                        .count(),
                BigInteger.valueOf(Math.max(0, restBytes)),
                (int) days.stream().filter(ForecastDay::isStillToCome).count());
    }

    private static boolean isComplete(StorageForecast forecast) {
        List<LegForecast> legs = forecast.legs();
        return legs.stream().noneMatch(leg -> leg.need() == OrderFlag.NO_SUPPLY)
                && (forecast.plan() != null || legs.stream().allMatch(leg -> leg.order() == null));
    }

    private static BigInteger bytes(List<ForecastDay> days) {
        return days.stream().map(day -> BigInteger.valueOf(day.actualBytes())).reduce(BigInteger.ZERO, BigInteger::add);
    }
}
