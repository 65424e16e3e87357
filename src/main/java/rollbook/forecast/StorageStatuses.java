package rollbook.forecast;

import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import rollbook.burndown.PoolOutlook;
import rollbook.ordering.OrderAdvice;
import rollbook.web.Display;

/** Says on one page how storage stands, in one statement. */
@Service
public class StorageStatuses {
    private final ForecastRuns runs;
    private final StorageWords words;
    private final Display display;

    StorageStatuses(ForecastRuns runs, StorageWords words, Display display) {
        this.runs = runs;
        this.words = words;
        this.display = display;
    }

    /** Empty before the first forecast, and while there is no leg or no shooting day to speak of. */
    public Optional<StorageStatus> latest(UUID productionId) {
        ForecastRun.Standing standing = runs.standing(productionId);
        return standing.toTell().map(run -> told(run, standing));
    }

    private StorageStatus told(ForecastRun run, ForecastRun.Standing standing) {
        StorageForecast forecast = run.results();
        return new StorageStatus(
                words.sentence(forecast),
                forecast.today(),
                forecast.endOfShow(),
                Objects.requireNonNull(standing.checkedAt()),
                display.text(
                        "forecast.method." + forecast.methodId(), run.inputs().replicates()),
                standing.outdated(),
                Urgency.worstFirst(forecast).stream()
                        .map(leg -> pool(leg, forecast))
                        .toList());
    }

    private StorageStatus.Pool pool(LegForecast leg, StorageForecast forecast) {
        PoolOutlook pool = leg.outlook();
        OrderAdvice.Order order = leg.order();
        OrderAdvice advice = leg.advice();
        return new StorageStatus.Pool(
                leg.legId(),
                leg.legName(),
                words.sentence(leg, forecast),
                words.need(leg),
                leg.need(),
                pool.roomNowBytes(),
                pool.capacityNowBytes(),
                pool.coverDays(),
                pool.daysToCome(),
                CoverPictures.leadDays(leg),
                words.chance(pool.chanceOfRunningOut()),
                order == null ? null : order.orderBy(),
                order == null ? "" : words.items(leg),
                order == null || advice == null
                        ? ""
                        : display.money(advice.cost(), advice.offer().currency()),
                pool.points().stream()
                        .map(point -> new StorageStatus.Point(point.date(), point.leftBytes()))
                        .toList());
    }
}
