package rollbook.verification;

import com.github.kagkarlsson.scheduler.task.ExecutionComplete;
import com.github.kagkarlsson.scheduler.task.ExecutionOperations;
import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import java.io.IOException;
import java.time.Duration;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The background job that reads an uploaded document. */
@Configuration(proxyBeanMethods = false)
class DocumentReading {
    static final TaskDescriptor<Void> TASK = TaskDescriptor.of("read-document");

    private static final Logger log = LoggerFactory.getLogger(DocumentReading.class);
    private static final int TRIES = 3;
    private static final Duration PAUSE = Duration.ofSeconds(5);

    @Bean
    OneTimeTask<Void> readDocumentTask(DocumentReader reader) {
        return Tasks.oneTime(TASK).onFailure(new TryAgainThenReject(reader)).execute((instance, context) -> {
            try {
                reader.read(UUID.fromString(instance.getId()));
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        });
    }

    /** A fault of this program or of the database must not leave a document waiting for ever without a word. */
    private record TryAgainThenReject(DocumentReader reader) implements FailureHandler<Void> {
        @Override
        public void onFailure(ExecutionComplete complete, ExecutionOperations<Void> operations) {
            int failures = complete.getExecution().consecutiveFailures + 1;
            log.error(
                    "Reading document {} failed ({} of {} tries)",
                    complete.getExecution().getId(),
                    failures,
                    TRIES,
                    complete.getCause().orElse(null));
            if (failures < TRIES) {
                operations.reschedule(complete, complete.getTimeDone().plus(PAUSE));
            } else {
                reader.rejectForFault(UUID.fromString(complete.getExecution().getId()));
                operations.stop();
            }
        }
    }
}
