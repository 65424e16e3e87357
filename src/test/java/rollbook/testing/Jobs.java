package rollbook.testing;

import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.testhelper.ManualScheduler;
import com.github.kagkarlsson.scheduler.testhelper.SettableClock;
import com.github.kagkarlsson.scheduler.testhelper.TestHelper;
import java.time.Instant;
import java.util.List;
import javax.sql.DataSource;

/** Runs the background jobs that are due, in the caller's thread, until none is left. */
public class Jobs {
    private static final int ROUNDS = 50;

    private final ManualScheduler scheduler;

    Jobs(DataSource dataSource, List<Task<?>> tasks) {
        scheduler = TestHelper.createManualScheduler(dataSource, tasks)
                .clock(new SettableClock())
                .build();
    }

    public synchronized void run() {
        for (int round = 0; round < ROUNDS; round++) {
            scheduler.setTime(Instant.now().plusSeconds(2));
            scheduler.runAnyDueExecutions();
            if (scheduler.getScheduledExecutions().stream()
                    .noneMatch(job -> job.getExecutionTime().isBefore(Instant.now()))) {
                return;
            }
        }
        throw new AssertionError("Background jobs go on for ever");
    }
}
