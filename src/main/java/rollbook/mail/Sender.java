package rollbook.mail;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Sends what is due, one message after the other. Any number of instances may do so at once: a message is locked while
 * it is taken, and on record as being sent before the mail server hears of it. So one whose sender dies is never sent
 * again by itself; a person decides.
 */
class Sender {
    private static final Logger log = LoggerFactory.getLogger(Sender.class);
    /** What the server doesn't take now is tried again after a minute, then after twice as long each time, up to this. */
    private static final Duration LONGEST_PAUSE = Duration.ofHours(1);

    private static final int DOUBLINGS = 6;

    private final Dispatch dispatch;
    private final Envelopes envelopes;
    private final Recipients recipients;
    private final Subscriptions subscriptions;
    private final @Nullable PostOffice server;
    private final TransactionTemplate transaction;
    private final Clock clock;

    /** @param server null if there is none: then messages are kept */
    Sender(
            Dispatch dispatch,
            Envelopes envelopes,
            Recipients recipients,
            Subscriptions subscriptions,
            @Nullable PostOffice server,
            TransactionTemplate transaction,
            Clock clock) {
        this.dispatch = dispatch;
        this.envelopes = envelopes;
        this.recipients = recipients;
        this.subscriptions = subscriptions;
        this.server = server;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** @param posting null if the message isn't sent now */
    private record Taken(Message message, @Nullable Posting posting) {}

    /** Goes on until nothing is due, or the server can't be reached. */
    void sendDue() {
        if (server == null) {
            return;
        }
        dispatch.giveUpInterrupted();
        Taken taken = take();
        while (taken != null && (taken.posting() == null || send(server, taken.message(), taken.posting()))) {
            taken = take();
        }
    }

    private @Nullable Taken take() {
        return transaction.execute(status -> dispatch.lockNext()
                .map(message -> new Taken(message, posting(message)))
                .orElse(null));
    }

    private @Nullable Posting posting(Message message) {
        if (clock.instant().isAfter(message.notAfter())) {
            dispatch.expire(message);
            return null;
        }
        return message.productionId() == null ? confirmation(message) : toMember(message);
    }

    private @Nullable Posting confirmation(Message message) {
        Recipient recipient = recipients.of(message.personId()).orElse(null);
        if (recipient == null || recipient.wantedAddress() == null) {
            dispatch.withdraw(message, Message.Withdrawn.ANSWERED);
            return null;
        }
        dispatch.begin(message, recipient.wantedAddress());
        return envelopes.confirmation(message, recipient, recipient.wantedAddress());
    }

    private @Nullable Posting toMember(Message message) {
        Optional<Addressee> to = subscriptions.addressee(message.productionId(), message.personId());
        String address = to.map(known -> known.recipient().address()).orElse(null);
        if (address == null) {
            dispatch.withdraw(message, Message.Withdrawn.NO_ADDRESS);
            return null;
        }
        Addressee addressee = to.orElseThrow();
        if (!addressee.subscription().wants(message.kind())) {
            dispatch.withdraw(message, Message.Withdrawn.NOT_WANTED);
            return null;
        }
        Instant now = clock.instant();
        Instant notBefore = addressee.recipient().notBefore(message.kind(), now);
        if (notBefore.isAfter(now)) {
            dispatch.putOff(message, notBefore);
            return null;
        }
        dispatch.begin(message, address);
        return envelopes.toMember(message, addressee, address);
    }

    /** Returns whether the server could be reached. */
    private boolean send(PostOffice server, Message message, Posting posting) {
        int attempt = message.attempts() + 1;
        try {
            server.send(posting);
        } catch (Undelivered failure) {
            log.warn("Mail {} wasn’t sent ({}): {}", message.id(), failure.how(), failure.says());
            dispatch.notSent(message.id(), attempt, after(failure.how()), failure.says(), pause(attempt));
            return failure.how() != Undelivered.How.NOT_REACHED;
        }
        dispatch.sent(message.id(), attempt);
        return true;
    }

    private static State after(Undelivered.How how) {
        return switch (how) {
            case NOT_REACHED, NOT_NOW -> State.WAITING;
            case REFUSED -> State.FAILED;
            case UNCERTAIN -> State.UNCERTAIN;
        };
    }

    private Instant pause(int attempt) {
        Duration pause = Duration.ofMinutes(1L << Math.min(DOUBLINGS, attempt - 1));
        return clock.instant().plus(pause.compareTo(LONGEST_PAUSE) < 0 ? pause : LONGEST_PAUSE);
    }
}
