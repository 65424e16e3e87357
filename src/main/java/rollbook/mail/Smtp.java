package rollbook.mail;

import jakarta.mail.Address;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.nio.charset.StandardCharsets;
import java.util.Date;
import org.eclipse.angus.mail.smtp.SMTPAddressFailedException;
import org.eclipse.angus.mail.smtp.SMTPSendFailedException;
import org.eclipse.angus.mail.smtp.SMTPSenderFailedException;
import org.jspecify.annotations.Nullable;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.mail.javamail.MimeMessageHelper;

/**
 * Hands messages to an SMTP server (RFC 5321), one connection each, and tells apart whether the server was reached, what
 * it answered, and whether the talk broke off: only then may it have the message although it never said so.
 */
final class Smtp implements PostOffice {
    private final JavaMailSenderImpl server;
    private final String from;

    Smtp(JavaMailSenderImpl server, String from) {
        this.server = server;
        this.from = from;
    }

    @Override
    public void send(Posting posting) throws Undelivered {
        MimeMessage message;
        Address[] to;
        try {
            message = message(server.getSession(), posting);
            to = message.getAllRecipients();
        } catch (MessagingException malformed) {
            throw new Undelivered(Undelivered.How.REFUSED, String.valueOf(malformed.getMessage()), malformed);
        }
        Transport connection = connect();
        try {
            connection.sendMessage(message, to);
        } catch (MessagingException failure) {
            throw undelivered(failure);
        } finally {
            close(connection);
        }
    }

    private Transport connect() throws Undelivered {
        try {
            String protocol = server.getProtocol();
            Transport connection = server.getSession().getTransport(protocol == null ? "smtp" : protocol);
            connection.connect(server.getHost(), server.getPort(), server.getUsername(), server.getPassword());
            return connection;
        } catch (MessagingException failure) {
            throw new Undelivered(Undelivered.How.NOT_REACHED, says(failure), failure);
        }
    }

    /** It has answered already; how it says good-bye doesn't matter. */
    private static void close(Transport connection) {
        try {
            connection.close();
        } catch (MessagingException ignored) {
            // The message is where it is.
        }
    }

    private MimeMessage message(Session session, Posting posting) throws MessagingException {
        MimeMessage message = new WithOwnId(session, posting.messageId());
        MimeMessageHelper helper = new MimeMessageHelper(message, true, StandardCharsets.UTF_8.name());
        helper.setFrom(from);
        helper.setTo(new InternetAddress(posting.to(), true));
        helper.setSubject(posting.subject());
        helper.setSentDate(Date.from(posting.sentAt()));
        helper.setText(posting.text(), posting.html());
        // RFC 3834: so that nobody's absence is announced to us.
        message.setHeader("Auto-Submitted", "auto-generated");
        if (posting.unsubscribe() != null) {
            message.setHeader("List-Unsubscribe", "<" + posting.unsubscribe() + ">");
            // RFC 8058, 3.1: with an address by https only.
            if (posting.unsubscribe().startsWith("https:")) {
                message.setHeader("List-Unsubscribe-Post", "List-Unsubscribe=One-Click");
            }
        }
        message.saveChanges();
        return message;
    }

    private static final class WithOwnId extends MimeMessage {
        private final String id;

        WithOwnId(Session session, String id) {
            super(session);
            this.id = id;
        }

        @Override
        protected void updateMessageID() throws MessagingException {
            setHeader("Message-ID", id);
        }
    }

    private static Undelivered undelivered(MessagingException failure) {
        int reply = reply(failure);
        Undelivered.How how = reply >= 500
                ? Undelivered.How.REFUSED
                : reply >= 400 ? Undelivered.How.NOT_NOW : Undelivered.How.UNCERTAIN;
        return new Undelivered(how, says(failure), failure);
    }

    /** The server's reply code that the failure tells of; -1 if there was none. */
    private static int reply(MessagingException failure) {
        for (Exception next = failure; next != null; next = next(next)) {
            int code = code(next);
            if (code >= 400) {
                return code;
            }
        }
        return -1;
    }

    private static int code(Exception failure) {
        if (failure instanceof SMTPSendFailedException send) {
            return send.getReturnCode();
        }
        if (failure instanceof SMTPAddressFailedException address) {
            return address.getReturnCode();
        }
        return failure instanceof SMTPSenderFailedException sender ? sender.getReturnCode() : -1;
    }

    /** The innermost words are the server's own. */
    private static String says(MessagingException failure) {
        Exception last = failure;
        for (Exception next = failure; next != null; next = next(next)) {
            last = next;
        }
        return String.valueOf(last.getMessage()).strip();
    }

    private static @Nullable Exception next(Exception failure) {
        return failure instanceof MessagingException mail ? mail.getNextException() : null;
    }
}
