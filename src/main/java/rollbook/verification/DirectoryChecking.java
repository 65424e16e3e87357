package rollbook.verification;

import com.github.kagkarlsson.scheduler.task.FailureHandler;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.UUID;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The background job that recomputes a document's directory hashes; no verdict waits for it. */
@Configuration(proxyBeanMethods = false)
class DirectoryChecking {
    static final TaskDescriptor<Void> TASK = TaskDescriptor.of("check-directories");

    private static final int TRIES = 3;
    private static final Duration PAUSE = Duration.ofSeconds(30);

    @Bean
    OneTimeTask<Void> checkDirectoriesTask(DocumentNotes notes) {
        return Tasks.oneTime(TASK)
                .onFailure(new FailureHandler.MaxRetriesFailureHandler<>(
                        TRIES, new FailureHandler.OnFailureRetryLater<>(PAUSE)))
                .execute((instance, context) -> {
                    try {
                        notes.checkDirectories(UUID.fromString(instance.getId()));
                    } catch (IOException e) {
                        throw new UncheckedIOException(e);
                    }
                });
    }
}
