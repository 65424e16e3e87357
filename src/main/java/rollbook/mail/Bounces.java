package rollbook.mail;

import jakarta.mail.Flags;
import jakarta.mail.Folder;
import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.Store;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.search.FlagTerm;
import java.io.IOException;
import java.util.Properties;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Reads delivery reports out of a mailbox and notes what came back. What was read is marked as seen, after it was noted:
 * read twice it says the same. Other mail in the mailbox is marked too and otherwise left alone.
 */
class Bounces {
    private static final Logger log = LoggerFactory.getLogger(Bounces.class);
    private static final String TIMEOUT_MILLIS = "30000";
    private static final int LARGEST_BYTES = 10_000_000;

    private final Outbox outbox;
    private final ReturnedMail mailbox;

    Bounces(Outbox outbox, ReturnedMail mailbox) {
        this.outbox = outbox;
        this.mailbox = mailbox;
    }

    /** Tries again the next time if the mailbox can't be reached. */
    void read() {
        try (Store store = Session.getInstance(properties()).getStore(mailbox.protocol())) {
            store.connect(mailbox.host(), mailbox.port(), mailbox.user(), mailbox.password());
            try (Folder folder = store.getFolder(mailbox.folder())) {
                folder.open(Folder.READ_WRITE);
                for (Message message : folder.search(new FlagTerm(new Flags(Flags.Flag.SEEN), false))) {
                    note(message);
                    message.setFlag(Flags.Flag.SEEN, true);
                }
            }
        } catch (MessagingException failure) {
            log.warn("The mailbox of returned mail can’t be read: {}", failure.getMessage());
        }
    }

    private void note(Message message) throws MessagingException {
        if (message.getSize() > LARGEST_BYTES) {
            return;
        }
        // Taken apart here: a mail server may be at a loss with what a broken message is made of.
        MimeMessage copy = new MimeMessage((MimeMessage) message);
        try {
            BounceReport.of(copy).ifPresent(bounce -> outbox.bounced(bounce.messageId(), bounce.why()));
        } catch (IOException | MessagingException unreadable) {
            log.warn("A returned message can’t be read: {}", unreadable.getMessage());
        }
    }

    private Properties properties() {
        Properties properties = new Properties();
        String prefix = "mail." + mailbox.protocol() + ".";
        properties.setProperty(prefix + "connectiontimeout", TIMEOUT_MILLIS);
        properties.setProperty(prefix + "timeout", TIMEOUT_MILLIS);
        return properties;
    }
}
