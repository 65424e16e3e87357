package rollbook.mail;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A message as it is handed to the mail server, with its secrets.
 *
 * @param messageId in angle brackets, the same whenever it is sent
 * @param html a whole document
 * @param unsubscribe the address that ends such mail; null where there is nothing to end
 */
record Posting(
        String to,
        String messageId,
        Instant sentAt,
        String subject,
        String text,
        String html,
        @Nullable String unsubscribe) {

    /** Without the text, which belongs into no log: there are secrets in it. */
    @Override
    public String toString() {
        return "Posting[" + messageId + "]";
    }
}
