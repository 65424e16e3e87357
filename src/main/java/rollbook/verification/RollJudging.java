package rollbook.verification;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.util.UUID;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.transaction.support.TransactionTemplate;

/** The background job that judges the copies of a roll anew. */
@Configuration(proxyBeanMethods = false)
class RollJudging {
    static final TaskDescriptor<Void> TASK = TaskDescriptor.of("judge-roll");
    private static final Duration FIRST_PAUSE = Duration.ofSeconds(5);
    private static final double LONGER = 2;

    /**
     * Orders the judging in the transaction that makes it necessary. Each order is a job of its own: a job that is
     * running already may have looked before this transaction's rows could be seen.
     */
    static void order(SchedulerClient jobs, Clock clock, UUID productionId, UUID rollId) {
        jobs.scheduleIfNotExists(
                TASK.instance(productionId + "/" + rollId + "/" + UUID.randomUUID())
                        .build(),
                clock.instant());
    }

    @Bean
    OneTimeTask<Void> judgeRollTask(RollJudge judge, Unjudged unjudged, TransactionTemplate transaction) {
        return Tasks.oneTime(TASK)
                .onFailure(new FailureHandler.ExponentialBackoffFailureHandler<>(FIRST_PAUSE, LONGER))
                .execute((instance, context) -> transaction.executeWithoutResult(status -> {
                    judge(judge, instance.getId());
                    unjudged.carriedOut(instance.getId());
                }));
    }

    private static void judge(RollJudge judge, String order) {
        String[] ids = order.split("/");
        try {
            judge.judge(UUID.fromString(ids[0]), UUID.fromString(ids[1]));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
