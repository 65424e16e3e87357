package rollbook.mail;

import jakarta.mail.internet.AddressException;
import jakarta.mail.internet.InternetAddress;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** Whom mail comes from, as whoever runs the portal has set it. */
@Component
class MailSettings {
    private static final String FROM = "rollbook.mail.from";
    /** Where nobody's mail comes from: RFC 2606. */
    private static final String NO_DOMAIN = "rollbook.invalid";

    private final String from;
    private final boolean server;

    /** @throws IllegalArgumentException if there is a mail server and nobody whom mail comes from */
    MailSettings(Environment environment) {
        server = !environment.getProperty("spring.mail.host", "").isBlank();
        from = environment.getProperty(FROM, "").strip();
        if (server || !from.isEmpty()) {
            check(from);
        }
    }

    private static void check(String from) {
        try {
            new InternetAddress(from, true);
        } catch (AddressException malformed) {
            throw new IllegalArgumentException(
                    FROM + " must be the address that mail comes from, such as rollbook@example.org, but is: " + from,
                    malformed);
        }
    }

    /** Whether mail can be sent. */
    boolean haveServer() {
        return server;
    }

    String from() {
        return from;
    }

    /** What stands behind the @ of a message's id: RFC 5322, 3.6.4. */
    String domain() {
        return from.isEmpty()
                ? NO_DOMAIN
                : from.substring(from.lastIndexOf('@') + 1).replace(">", "");
    }
}
