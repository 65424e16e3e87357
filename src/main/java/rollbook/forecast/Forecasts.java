package rollbook.forecast;

import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import rollbook.ordering.OrderAdvice;

/** What the newest forecast of a production says. */
@Service
public class Forecasts {
    private static final double BAD_LUCK = 0.1;

    private final ForecastRuns runs;
    private final ForecastJob job;
    private final StorageWords words;
    private final CoverPictures covers;

    Forecasts(ForecastRuns runs, ForecastJob job, StorageWords words, CoverPictures covers) {
        this.runs = runs;
        this.job = job;
        this.words = words;
        this.covers = covers;
    }

    /** Computes and keeps a forecast now, besides those of the background job. */
    public void compute(UUID productionId) {
        job.compute(productionId);
    }

    /** Empty before the first forecast, and while there is no leg or no shooting day to speak of. */
    public Optional<StorageOutlook> latest(UUID productionId) {
        ForecastRun.Standing standing = runs.standing(productionId);
        return standing.toTell().map(run -> told(run, standing));
    }

    private StorageOutlook told(ForecastRun run, ForecastRun.Standing standing) {
        StorageForecast forecast = run.results();
        return new StorageOutlook(
                words.sentence(forecast),
                run.computedAt(),
                Objects.requireNonNull(standing.checkedAt()),
                forecast.today(),
                forecast.endOfShow(),
                Urgency.worstFirst(forecast).stream()
                        .map(leg -> leg(leg, standing.raisedLegs().contains(leg.legId()), forecast))
                        .toList(),
                covers.picture(forecast).orElse(null));
    }

    /** Empty before the first forecast. */
    public Optional<CostToCome> costToCome(UUID productionId) {
        return Optional.ofNullable(runs.standing(productionId).newest()).map(CostToCome::of);
    }

    private StorageOutlook.Leg leg(LegForecast leg, boolean raised, StorageForecast forecast) {
        OrderAdvice advice = leg.advice();
        OrderAdvice.Order order = leg.order();
        return new StorageOutlook.Leg(
                leg.legId(),
                leg.legName(),
                words.sentence(leg, forecast),
                leg.need(),
                raised || leg.need() == OrderFlag.NO_SUPPLY || leg.need() == OrderFlag.NO_HELP,
                leg.outlook().chanceOfRunningOut(),
                leg.outlook().runsOutBy(BAD_LUCK),
                order == null ? null : order.orderBy(),
                order == null ? 0 : order.items(),
                order == null ? 0 : order.packs(),
                order == null ? null : advice.cost(),
                order == null ? null : advice.offer().currency());
    }
}
