package rollbook.forecast;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.exceptions.ExecutionException;
import com.github.kagkarlsson.scheduler.exceptions.TaskInstanceCurrentlyExecutingException;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import java.time.Clock;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.format.FormatChanged;
import rollbook.inventory.MediaItemChanged;
import rollbook.offload.RollChanged;
import rollbook.production.CopyPlanChanged;
import rollbook.production.ProductionChanged;
import rollbook.purchase.OrderChanged;
import rollbook.schedule.ScheduleChanged;
import rollbook.supplier.SupplierChanged;

/**
 * Asks for forecasts. What changes in a transaction is asked for once, just before it commits: so a forecast is asked
 * for if and only if something changed, and the lock on the production's state is held for no time at all and as the
 * last of all locks.
 */
@Component
class ForecastRequests {
    static final String TASK = "forecast";

    private final ForecastRuns runs;
    private final TransactionTemplate transaction;
    private final ObjectProvider<SchedulerClient> scheduler;
    private final Clock clock;

    /** The scheduler comes late, because it is made of tasks that ask for forecasts themselves. */
    ForecastRequests(
            ForecastRuns runs,
            TransactionTemplate transaction,
            ObjectProvider<SchedulerClient> scheduler,
            Clock clock) {
        this.runs = runs;
        this.transaction = transaction;
        this.scheduler = scheduler;
        this.clock = clock;
    }

    @EventListener
    void on(ScheduleChanged event) {
        ask(event.productionId(), Because.SCHEDULE);
    }

    @EventListener
    void on(FormatChanged event) {
        ask(event.productionId(), Because.FORMATS);
    }

    @EventListener
    void on(RollChanged event) {
        ask(event.productionId(), Because.ROLLS);
    }

    @EventListener
    void on(MediaItemChanged event) {
        ask(event.productionId(), Because.MEDIA);
    }

    @EventListener
    void on(CopyPlanChanged event) {
        ask(event.productionId(), Because.COPY_PLAN);
    }

    @EventListener
    void on(ProductionChanged event) {
        ask(event.productionId(), Because.PRODUCTION);
    }

    @EventListener
    void on(SupplierChanged event) {
        ask(event.productionId(), Because.SUPPLY);
    }

    @EventListener
    void on(OrderChanged event) {
        ask(event.productionId(), Because.ORDER);
    }

    void ask(UUID productionId, Because because) {
        if (TransactionSynchronizationManager.isSynchronizationActive()) {
            asking().add(productionId, because);
        } else {
            transaction.executeWithoutResult(status -> asking().add(productionId, because));
        }
    }

    private Asking asking() {
        return TransactionSynchronizationManager.getSynchronizations().stream()
                .filter(Asking.class::isInstance)
                .map(Asking.class::cast)
                .findFirst()
                .orElseGet(() -> {
                    Asking asking = new Asking();
                    TransactionSynchronizationManager.registerSynchronization(asking);
                    return asking;
                });
    }

    private void schedule(UUID productionId, Set<Because> because) {
        // The state's row first: who holds it is alone in looking for the job's row and in adding it.
        boolean waitsToTryAgain = runs.ask(productionId, because);
        TaskInstance<Void> job = new TaskInstance<>(TASK, productionId.toString());
        if (!scheduler.getObject().scheduleIfNotExists(job, clock.instant()) && waitsToTryAgain) {
            tryAgainNow(job);
        }
    }

    /** What was wrong may be mended by what was just done, so it doesn't wait any longer. */
    private void tryAgainNow(TaskInstance<Void> job) {
        try {
            scheduler.getObject().reschedule(job, clock.instant());
        } catch (TaskInstanceCurrentlyExecutingException | ExecutionException running) {
            // It has just been started, and sees at its end that more was asked for.
        }
    }

    /** What the current transaction asks for. */
    private final class Asking implements TransactionSynchronization {
        private final Map<UUID, Set<Because>> asked = new TreeMap<>();

        void add(UUID productionId, Because because) {
            asked.computeIfAbsent(productionId, id -> EnumSet.noneOf(Because.class))
                    .add(because);
        }

        @Override
        public void beforeCommit(boolean readOnly) {
            asked.forEach(ForecastRequests.this::schedule);
        }
    }
}
