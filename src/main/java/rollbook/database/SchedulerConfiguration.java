package rollbook.database;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.SchedulerBuilder;
import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.OnStartup;
import com.github.kagkarlsson.scheduler.task.Task;
import java.time.Duration;
import java.util.List;
import javax.sql.DataSource;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.annotation.Primary;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.datasource.TransactionAwareDataSourceProxy;

/**
 * Background jobs. Tasks are beans of the modules that own them; their executions are rows in the database, so any
 * instance may run them and a job scheduled in a transaction exists if and only if that transaction commits.
 */
@Configuration(proxyBeanMethods = false)
class SchedulerConfiguration {
    private static final int THREADS = 2;
    private static final Duration POLLING_INTERVAL = Duration.ofMillis(500);
    private static final Duration HEARTBEAT_INTERVAL = Duration.ofSeconds(5);

    @Bean(destroyMethod = "stop")
    @SuppressWarnings({"unchecked", "rawtypes"})
    Scheduler scheduler(DataSource dataSource, List<Task<?>> tasks) {
        List<Task<?>> onDemand =
                tasks.stream().filter(task -> !(task instanceof OnStartup)).toList();
        List recurring = tasks.stream().filter(OnStartup.class::isInstance).toList();
        SchedulerBuilder builder = Scheduler.create(new TransactionAwareDataSourceProxy(dataSource), onDemand)
                .threads(THREADS)
                .pollingInterval(POLLING_INTERVAL)
                // A job whose instance was killed is taken up by another one, or after the restart, this soon.
                .heartbeatInterval(HEARTBEAT_INTERVAL)
                .missedHeartbeatsLimit(4)
                .tableName("scheduled_tasks");
        return builder.startTasks(recurring).build();
    }

    /** Orders jobs, in the caller's transaction. Apart from the scheduler, because the tasks' own beans order jobs too. */
    @Bean
    @Primary
    SchedulerClient schedulerClient(DataSource dataSource) {
        return SchedulerClient.Builder.create(new TransactionAwareDataSourceProxy(dataSource))
                .tableName("scheduled_tasks")
                .build();
    }

    /** Jobs start after the pages do, and not at all where an instance is to serve pages only. */
    @Configuration(proxyBeanMethods = false)
    @ConditionalOnProperty(name = "rollbook.jobs.enabled", matchIfMissing = true)
    static class Start {
        private final Scheduler scheduler;

        Start(Scheduler scheduler) {
            this.scheduler = scheduler;
        }

        @EventListener(ApplicationReadyEvent.class)
        void start() {
            scheduler.start();
        }
    }
}
