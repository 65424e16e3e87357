package rollbook.verification;

import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Clock;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The background job that forgets files which nobody went on sending. */
@Configuration(proxyBeanMethods = false)
class UploadSweeping {
    @Bean
    RecurringTask<Void> forgetUploadsTask(Uploads uploads, Clock clock) {
        return Tasks.recurring("forget-uploads", FixedDelay.ofHours(1))
                .execute((instance, context) -> uploads.forgetOld(clock.instant()));
    }
}
