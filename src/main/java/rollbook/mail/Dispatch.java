package rollbook.mail;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** What becomes of messages while they are sent. That a message is being sent is committed before the server hears of it. */
@Repository
class Dispatch {
    /** How long a talk with the mail server may take before it counts as cut off. */
    static final Duration LONGEST_TALK = Duration.ofMinutes(10);

    /** Whoever ends an attempt after it was given up knows better, unless another one has begun since. */
    private static final String OF_THIS_ATTEMPT =
            " where id = ? and attempts = ? and state in ('SENDING', 'UNCERTAIN')";

    private final JdbcClient jdbc;
    private final Clock clock;

    Dispatch(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Messages that somebody began to send and never ended: nobody knows whether they went out. */
    @Transactional
    void giveUpInterrupted() {
        jdbc.sql("update mail_message set state = 'UNCERTAIN' where state = 'SENDING' and tried_at < ?")
                .param(Timestamp.from(clock.instant().minus(LONGEST_TALK)))
                .update();
    }

    /** The next message that is due, locked until the transaction ends; others take the one after it. */
    @Transactional(propagation = Propagation.MANDATORY)
    Optional<Message> lockNext() {
        return jdbc.sql(Outbox.MESSAGES + """
                         where m.state = 'WAITING' and m.not_before <= ?
                        order by m.not_before, m.created_at, m.id limit 1 for update of m skip locked
                        """)
                .param(Timestamp.from(clock.instant()))
                .query(Message.class)
                .optional();
    }

    @Transactional(propagation = Propagation.MANDATORY)
    void begin(Message message, String address) {
        jdbc.sql("""
                        update mail_message set state = 'SENDING', attempts = attempts + 1, tried_at = ?, address = ?, failure = ''
                        where id = ?
                        """)
                .params(Timestamp.from(clock.instant()), address, message.id())
                .update();
    }

    /** It is of no use to anybody any more. */
    @Transactional(propagation = Propagation.MANDATORY)
    void expire(Message message) {
        jdbc.sql("update mail_message set state = 'EXPIRED' where id = ?")
                .param(message.id())
                .update();
    }

    @Transactional(propagation = Propagation.MANDATORY)
    void withdraw(Message message, Message.Withdrawn why) {
        jdbc.sql("update mail_message set state = 'WITHDRAWN', failure = ? where id = ?")
                .params(why.name(), message.id())
                .update();
    }

    @Transactional(propagation = Propagation.MANDATORY)
    void putOff(Message message, Instant until) {
        jdbc.sql("update mail_message set not_before = ? where id = ?")
                .params(Timestamp.from(until), message.id())
                .update();
    }

    @Transactional
    void sent(UUID id, int attempt) {
        jdbc.sql("update mail_message set state = 'SENT', sent_at = ?" + OF_THIS_ATTEMPT)
                .params(Timestamp.from(clock.instant()), id, attempt)
                .update();
    }

    /** @param notBefore when it is tried again, if it waits */
    @Transactional
    void notSent(UUID id, int attempt, State state, String failure, Instant notBefore) {
        jdbc.sql("update mail_message set state = ?, failure = ?, not_before = ?" + OF_THIS_ATTEMPT)
                .params(state.name(), failure, Timestamp.from(notBefore), id, attempt)
                .update();
    }
}
