package rollbook.forecast;

import com.github.kagkarlsson.scheduler.task.helper.CustomTask;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Clock;
import java.util.UUID;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The background jobs of this module: one execution per production that waits for a forecast, and a look at the dates. */
@Configuration(proxyBeanMethods = false)
class ForecastTasks {
    @Bean
    CustomTask<Void> forecastTask(ForecastJob job) {
        return Tasks.custom(ForecastRequests.TASK, Void.class)
                .onFailure((failed, operations) -> job.tryAgain(failed, operations))
                .onDeadExecutionRevive()
                .execute((instance, context) -> {
                    UUID productionId = UUID.fromString(instance.getId());
                    long answered = job.compute(productionId);
                    return (execution, operations) -> job.finish(productionId, answered, execution, operations);
                });
    }

    /** Hourly, for each production's night comes in its own time zone, and the portal may have been off at that hour. */
    @Bean
    RecurringTask<Void> forecastNewDaysTask(ForecastJob job, Clock clock) {
        return Tasks.recurring("forecast-new-days", FixedDelay.ofHours(1))
                .execute((instance, context) -> job.startNewDays(clock.instant()));
    }
}
