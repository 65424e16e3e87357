package rollbook.forecast;

import com.github.kagkarlsson.scheduler.task.ExecutionComplete;
import com.github.kagkarlsson.scheduler.task.ExecutionOperations;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.production.Production;
import rollbook.production.Productions;

/** Computes a production's forecast from one state of the database, keeps it, and sees whether it has to do so again. */
@Component
class ForecastJob {
    private static final LocalTime NIGHT = LocalTime.of(3, 0);
    /** What failed is tried again after a minute, then after twice as long each time, up to this. */
    private static final Duration LONGEST_WAIT = Duration.ofHours(1);

    private static final int DOUBLINGS = 6;

    private final ForecastInputs inputs;
    private final ForecastRuns runs;
    private final ForecastRequests requests;
    private final FlagActs flags;
    private final Productions productions;
    private final TransactionTemplate transaction;
    private final TransactionTemplate snapshot;
    private final Clock clock;

    ForecastJob(
            ForecastInputs inputs,
            ForecastRuns runs,
            ForecastRequests requests,
            FlagActs flags,
            Productions productions,
            PlatformTransactionManager transactions,
            Clock clock) {
        this.inputs = inputs;
        this.runs = runs;
        this.requests = requests;
        this.flags = flags;
        this.productions = productions;
        this.transaction = new TransactionTemplate(transactions);
        this.snapshot = new TransactionTemplate(transactions);
        this.snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        this.snapshot.setReadOnly(true);
        this.clock = clock;
    }

    /** Returns the number of the request that this answers; whatever is asked later may not be in it. */
    long compute(UUID productionId) {
        Gathered gathered =
                snapshot.execute(status -> new Gathered(runs.asked(productionId), inputs.gather(productionId)));
        StorageForecast forecast = SimulatedForecast.of(gathered.input());
        transaction.executeWithoutResult(status -> {
            flags.lock(productionId);
            long runId = runs.keep(productionId, gathered.asked(), gathered.input(), forecast);
            flags.follow(productionId, runId, forecast);
        });
        return gathered.asked().number();
    }

    /** Ends the job's execution; if something was asked for after the forecast's inputs were read, it goes on at once. */
    void finish(UUID productionId, long answered, ExecutionComplete execution, ExecutionOperations<Void> job) {
        transaction.executeWithoutResult(status -> {
            if (runs.isAnswered(productionId, answered)) {
                job.remove();
            } else {
                job.reschedule(execution, clock.instant());
            }
        });
    }

    /** Keeps what went wrong, for people to see, and tries again later; the forecast from before stays. */
    void tryAgain(ExecutionComplete failed, ExecutionOperations<Void> job) {
        UUID productionId = UUID.fromString(failed.getExecution().taskInstance.getId());
        Duration wait = Duration.ofMinutes(1L << Math.min(DOUBLINGS, failed.getExecution().consecutiveFailures));
        Instant nextTry = clock.instant().plus(wait.compareTo(LONGEST_WAIT) < 0 ? wait : LONGEST_WAIT);
        transaction.executeWithoutResult(status -> {
            runs.fail(productionId, Failure.of(failed.getCause().orElse(null)), nextTry);
            job.reschedule(failed, nextTry);
        });
    }

    /**
     * Asks for a forecast of every production that has none of its new day yet, from three o'clock of its own night on.
     * A production without a leg or a shooting day has nothing to forecast.
     */
    void startNewDays(Instant now) {
        Map<UUID, LocalDate> forecastedFor = runs.newestDates();
        for (Production production : productions.all()) {
            ZonedDateTime there = now.atZone(production.zone());
            LocalDate newest = forecastedFor.get(production.id());
            if (newest != null
                    && newest.isBefore(there.toLocalDate())
                    && !there.toLocalTime().isBefore(NIGHT)) {
                requests.ask(production.id(), Because.NEW_DAY);
            }
        }
    }

    private record Gathered(ForecastRuns.Asked asked, ForecastInput input) {}
}
