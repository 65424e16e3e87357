package rollbook.mail;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A message in the outbox.
 *
 * @param productionId null for a confirmation
 * @param notBefore when it goes, if it waits
 * @param notAfter from when on it is of no use any more
 * @param attempts how often it was handed to the mail server, or was to be
 * @param triedAt when last
 * @param address where it went then
 * @param failure what the mail server said, or broke; of a withdrawn message a {@link Withdrawn}
 * @param bounce why it came back, empty if it didn't
 */
record Message(
        UUID id,
        @Nullable UUID productionId,
        UUID personId,
        String personName,
        Kind kind,
        String subject,
        String text,
        String html,
        String messageId,
        Instant createdAt,
        Instant notBefore,
        Instant notAfter,
        State state,
        int attempts,
        @Nullable Instant triedAt,
        @Nullable String address,
        String failure,
        @Nullable Instant sentAt,
        @Nullable Instant bouncedAt,
        String bounce) {

    /** Why nobody is to get a message any more. */
    enum Withdrawn {
        /** A person said so. */
        BY_HAND,
        /** The person has no confirmed address, or belongs to the production no more. */
        NO_ADDRESS,
        /** The person doesn't want such mail any more. */
        NOT_WANTED,
        /** The address is confirmed already, or another one is wanted. */
        ANSWERED
    }

    /** For templates. */
    public boolean mayGoAgain() {
        return state.mayGoAgain() || state == State.SENT && bouncedAt != null;
    }

    /** Whether it may still be held back; for templates. */
    public boolean mayBeWithdrawn() {
        return state == State.WAITING;
    }

    /** Whether somebody may have to see to it; for templates. */
    public boolean isTrouble() {
        return state == State.UNCERTAIN
                || state == State.FAILED
                || bouncedAt != null
                || state == State.WAITING && !failure.isEmpty();
    }

    /** The body for a page of the portal, below a heading there; for templates. */
    public String body() {
        return html.replace(LetterText.PORTAL, "").replace("<h2>", "<h3>").replace("</h2>", "</h3>");
    }
}
