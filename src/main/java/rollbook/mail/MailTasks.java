package rollbook.mail;

import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Clock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.production.Production;
import rollbook.production.Productions;

/** The background jobs: one writes what is due, one sends it, one reads what comes back. */
@Configuration(proxyBeanMethods = false)
class MailTasks {
    private static final Logger log = LoggerFactory.getLogger(MailTasks.class);

    @Bean
    Sender outboxSender(
            Dispatch dispatch,
            Envelopes envelopes,
            Recipients recipients,
            Subscriptions subscriptions,
            ObjectProvider<JavaMailSenderImpl> server,
            MailSettings settings,
            TransactionTemplate transaction,
            Clock clock) {
        JavaMailSenderImpl found = settings.haveServer() ? server.getObject() : null;
        return new Sender(
                dispatch,
                envelopes,
                recipients,
                subscriptions,
                found == null ? null : new Smtp(found, settings.from()),
                transaction,
                clock);
    }

    @Bean
    RecurringTask<Void> mailWriteTask(Mailings mailings, Productions productions) {
        return Tasks.recurring("mail-write", FixedDelay.ofMinutes(1))
                .execute((instance, context) -> productions.all().forEach(one -> write(mailings, one)));
    }

    /** What is wrong with one production keeps no other's mail. */
    private static void write(Mailings mailings, Production production) {
        try {
            mailings.write(production.id());
        } catch (RuntimeException failure) {
            log.error("The mail of {} can’t be written", production.code(), failure);
        }
    }

    @Bean
    RecurringTask<Void> mailSendTask(Sender sender) {
        return Tasks.recurring("mail-send", FixedDelay.ofSeconds(10)).execute((instance, context) -> sender.sendDue());
    }

    @Bean
    @ConditionalOnProperty("rollbook.mail.bounces.host")
    RecurringTask<Void> mailBouncesTask(Outbox outbox, Environment environment) {
        Bounces bounces = new Bounces(outbox, ReturnedMail.of(environment));
        return Tasks.recurring("mail-bounces", FixedDelay.ofMinutes(5)).execute((instance, context) -> bounces.read());
    }
}
