package rollbook.mail;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.production.Membership;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.PortalAddress;
import rollbook.web.Secret;

/**
 * Makes of a message what goes to the mail server: with the portal's address in its links, why it came and how to end it,
 * and the secrets of its links, each drawn anew whenever it is sent, so that the database opens none of them.
 */
@Component
class Envelopes {
    /** Stands for the secret that confirms an address. */
    static final String CODE = "{code}";

    /** RFC 3676, 4.3: a mail program leaves out what follows when somebody answers. */
    private static final String FOOT = "\n-- \n";

    private static final String FRAME = """
            <!DOCTYPE html>
            <html lang="en-GB"><head><meta charset="utf-8"><title>%s</title></head>
            <body style="font-family: sans-serif; line-height: 1.5; max-width: 42em">
            %s<hr>
            <p style="font-size: smaller">%s</p>
            </body></html>
            """;

    private final JdbcClient jdbc;
    private final Recipients recipients;
    private final PortalAddress portal;
    private final Display display;
    private final Clock clock;

    Envelopes(JdbcClient jdbc, Recipients recipients, PortalAddress portal, Display display, Clock clock) {
        this.jdbc = jdbc;
        this.recipients = recipients;
        this.portal = portal;
        this.display = display;
        this.clock = clock;
    }

    @Transactional(propagation = Propagation.MANDATORY)
    Posting confirmation(Message message, Recipient recipient, String address) {
        String code = recipients.renewCode(message.personId()).text();
        return posting(
                message, address, recipient, code, display.text("mail.foot.confirmation", recipient.portal()), null);
    }

    @Transactional(propagation = Propagation.MANDATORY)
    Posting toMember(Message message, Addressee to, String address) {
        Secret secret = Secret.fresh();
        jdbc.sql("insert into mail_unsubscription (secret_sha256, message_id) values (?, ?)")
                .params(secret.sha256(), message.id())
                .update();
        Membership member = to.membership();
        return posting(
                message,
                address,
                to.recipient(),
                "",
                display.text("mail.foot." + message.kind(), member.productionName(), member.code()),
                "/mail/unsubscribe/" + secret.text());
    }

    private Posting posting(
            Message message,
            String address,
            Recipient recipient,
            String code,
            String why,
            @Nullable String unsubscribe) {
        String base = portal.base(recipient.portal());
        String choose = base + "/account/mail";
        String end = unsubscribe == null ? null : base + unsubscribe;
        StringBuilder text = new StringBuilder(message.text().replace(LetterText.PORTAL, base));
        text.append(FOOT).append(why).append('\n');
        text.append(display.text("mail.foot.choose")).append(' ').append(choose).append('\n');
        StringBuilder foot = new StringBuilder(LetterText.escaped(why));
        foot.append("<br>").append(link(choose, display.text("mail.foot.choose.link")));
        if (end != null) {
            String words = display.text("mail.foot.end." + message.kind());
            text.append(words).append(": ").append(end).append('\n');
            foot.append("<br>").append(link(end, words));
        }
        String html = FRAME.formatted(
                LetterText.escaped(message.subject()), message.html().replace(LetterText.PORTAL, base), foot);
        return new Posting(
                address,
                message.messageId(),
                clock.instant(),
                message.subject(),
                text.toString().replace(CODE, code),
                html.replace(CODE, code),
                end);
    }

    private static String link(String href, String words) {
        return "<a href=\"%s\">%s</a>".formatted(LetterText.escaped(href), LetterText.escaped(words));
    }

    /** The message whose mail a link ends, and whether the link was used before. */
    record Unsubscription(UUID productionId, UUID personId, Kind kind, boolean used) {}

    /** @throws NotFoundException if nothing was sent with that secret */
    Unsubscription unsubscription(Secret secret) {
        return jdbc.sql("""
                        select m.production_id, m.person_id, m.kind, u.used_at is not null as used
                        from mail_unsubscription u join mail_message m on m.id = u.message_id
                        where u.secret_sha256 = ?
                        """)
                .param(secret.sha256())
                .query(Unsubscription.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /** Returns whether it had not been used before. */
    @Transactional(propagation = Propagation.MANDATORY)
    boolean use(Secret secret) {
        return jdbc.sql("update mail_unsubscription set used_at = ? where secret_sha256 = ? and used_at is null")
                        .params(Timestamp.from(clock.instant()), secret.sha256())
                        .update()
                > 0;
    }
}
