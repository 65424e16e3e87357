package rollbook.mail;

import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.user.GreenMailUser;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.List;
import java.util.Properties;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

/** What comes back, read from a real IMAP server. The reports are written after the example in RFC 3464, appendix E.1. */
@PortalTest
class BouncesTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Outbox outbox;

    @Autowired
    Recipients recipients;

    @Autowired
    Subscriptions subscriptions;

    private final GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_IMAP));
    private GreenMailUser mailbox;
    private TestProduction production;
    private Bounces bounces;

    @BeforeEach
    void begin() {
        server.start();
        mailbox = server.setUser("bounces@portal.example", "bounces", "secret");
        production = fixtures.production();
        recipients.keepKnown(production.as(Role.OFFICE).personId(), "office@tide.example", ZoneId.of("UTC"));
        bounces = new Bounces(
                outbox,
                new ReturnedMail("imap", "127.0.0.1", server.getImap().getPort(), "bounces", "secret", "INBOX"));
    }

    @AfterEach
    void stop() {
        server.stop();
    }

    @Test
    void whatCameBackIsShownAtTheMessageItself() throws Exception {
        Message sent = sent();
        Message other = sent();
        deliver(report("failed", sent.messageId()));
        bounces.read();
        bounces.read();
        assertThat(now(sent).bouncedAt()).isNotNull();
        assertThat(now(sent).bounce()).isEqualTo("5.1.1 smtp; 550 no such mailbox here");
        assertThat(now(sent).mayGoAgain()).isTrue();
        assertThat(now(other)).isEqualTo(other);
        assertThat(new OutboxList(jdbc).counts(production.id).trouble()).isEqualTo(1);
    }

    @Test
    void aReportOfADelayOrOfSomebodyElsesMailSaysNothing() throws Exception {
        Message sent = sent();
        deliver(report("delayed", sent.messageId()));
        deliver(report("failed", "<other@elsewhere.example>"));
        deliver("Subject: Re: your mail\r\nMessage-ID: <x@y.example>\r\n\r\nI am away.\r\n");
        deliver(report("failed", sent.messageId()).replace("message/rfc822", "text/plain"));
        bounces.read();
        assertThat(now(sent)).isEqualTo(sent);
    }

    @Test
    void aBrokenReportKeepsNoOtherFromBeingRead() throws Exception {
        Message sent = sent();
        String report = report("failed", sent.messageId());
        deliver("Content-Type: multipart/report; report-type=delivery-status\r\n\r\nbroken\r\n");
        for (int length = 200; length < report.length() - 200; length += 37) {
            deliver(report.substring(0, length));
        }
        deliver(report);
        bounces.read();
        assertThat(now(sent).bounce()).endsWith("no such mailbox here");
    }

    @Test
    void whatIsNotSentYetCannotComeBack() throws Exception {
        Message waiting = write();
        deliver(report("failed", waiting.messageId()));
        bounces.read();
        assertThat(now(waiting)).isEqualTo(waiting);
    }

    @Test
    void aMailboxThatCannotBeReachedIsTriedAgainLater() throws Exception {
        Message sent = sent();
        deliver(report("failed", sent.messageId()));
        new Bounces(
                        outbox,
                        new ReturnedMail("imap", "127.0.0.1", server.getImap().getPort(), "bounces", "wrong", "INBOX"))
                .read();
        assertThat(now(sent).bouncedAt()).isNull();
        bounces.read();
        assertThat(now(sent).bouncedAt()).isNotNull();
    }

    private Message sent() {
        Message message = write();
        jdbc.sql("""
                        update mail_message set state = 'SENT', sent_at = now(), attempts = 1, tried_at = now(),
                            address = 'office@tide.example' where id = ?
                        """).param(message.id()).update();
        return now(message);
    }

    private Message write() {
        String about = "day:" + UUID.randomUUID();
        outbox.write(
                subscriptions
                        .addressee(production.id, production.as(Role.OFFICE).personId())
                        .orElseThrow(),
                Kind.DIGEST,
                new Letter("Main day 1 wrapped", "It is.", List.of()),
                List.of(about));
        return outbox.get(
                production.id,
                jdbc.sql("select message_id from mail_told where about = ?")
                        .param(about)
                        .query(UUID.class)
                        .single());
    }

    private Message now(Message message) {
        return outbox.get(production.id, message.id());
    }

    private void deliver(String raw) throws Exception {
        mailbox.deliver(new MimeMessage(
                Session.getInstance(new Properties()),
                new ByteArrayInputStream(raw.getBytes(StandardCharsets.US_ASCII))));
    }

    private static String report(String action, String messageId) {
        return """
                From: Mail Delivery Subsystem <postmaster@mail.example>
                To: bounces@portal.example
                Subject: Returned mail
                MIME-Version: 1.0
                Content-Type: multipart/report; report-type=delivery-status; boundary="part"

                --part

                Your message could not be delivered.

                --part
                Content-Type: message/delivery-status

                Reporting-MTA: dns; mail.example

                Original-Recipient: rfc822;office@tide.example
                Final-Recipient: rfc822;office@tide.example
                Action: %s
                Status: 5.1.1
                Diagnostic-Code: smtp; 550 no such
                  mailbox here

                --part
                Content-Type: message/rfc822

                From: Rollbook <rollbook@portal.example>
                To: office@tide.example
                Message-ID: %s
                Subject: Main day 1 wrapped

                It is.

                --part--
                """.formatted(action, messageId).replace("\n", "\r\n");
    }
}
