package rollbook.mail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import jakarta.mail.internet.MimeMessage;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.mail.javamail.JavaMailSenderImpl;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

/** What becomes of messages, with a real SMTP server, with one that refuses and hangs up, and with senders that die. */
@PortalTest
class SenderTests {
    private static final Letter LETTER =
            new Letter("Main day 1 wrapped — 2 cards", "It is wrapped.", List.of(new Letter.Part("Proof", List.of())));

    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Outbox outbox;

    @Autowired
    Envelopes envelopes;

    @Autowired
    Recipients recipients;

    @Autowired
    Subscriptions subscriptions;

    @Autowired
    TransactionTemplate transaction;

    private final MovingClock clock = new MovingClock();
    private final GreenMail server = new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
    private TestProduction production;

    @BeforeEach
    void begin() {
        jdbc.sql(
                        "update mail_message set state = 'WITHDRAWN', failure = 'BY_HAND' where state in ('WAITING', 'SENDING')")
                .update();
        production = fixtures.production();
        recipients.keepKnown(office().personId(), address(), ZoneId.of("Europe/Lisbon"));
        server.start();
    }

    @AfterEach
    void stop() {
        server.stop();
    }

    @Test
    void aMessageArrivesOnceWithBothItsTextsAndTheIdItWasKeptUnder() throws Exception {
        Message message = write();
        sender(smtp()).sendDue();
        sender(smtp()).sendDue();

        MimeMessage arrived = only();
        assertThat(arrived.getHeader("Message-ID")).containsExactly(message.messageId());
        assertThat(arrived.getSubject()).isEqualTo(LETTER.subject());
        assertThat(arrived.getFrom()[0]).hasToString("Rollbook <rollbook@portal.example>");
        assertThat(arrived.getAllRecipients()[0]).hasToString(address());
        assertThat(arrived.getHeader("Auto-Submitted")).containsExactly("auto-generated");
        assertThat(parts(arrived)).hasSize(2).satisfies(parts -> {
            assertThat(parts.get(0)).contains("It is wrapped.", "\n-- ", "/mail/unsubscribe/");
            assertThat(parts.get(1)).contains("<p>It is wrapped.</p>", "/mail/unsubscribe/");
        });
        Message sent = now(message);
        assertThat(sent.state()).isEqualTo(State.SENT);
        assertThat(sent.attempts()).isEqualTo(1);
        assertThat(sent.address()).isEqualTo(address());
        assertThat(sent.sentAt()).isEqualTo(clock.instant());
    }

    /** The sender dies after the server took the message over and before that was on record. */
    @Test
    void whatMayHaveGoneOutIsNeverSentAgainByItself() throws Exception {
        Message message = write();
        PostOffice smtp = smtp();
        assertThatThrownBy(() -> sender(posting -> {
                            smtp.send(posting);
                            throw new Killed();
                        })
                        .sendDue())
                .isInstanceOf(Killed.class);
        assertThat(now(message).state()).isEqualTo(State.SENDING);
        only();

        sender(smtp).sendDue();
        assertThat(now(message).state()).as("perhaps somebody is still talking").isEqualTo(State.SENDING);
        clock.goOn(Dispatch.LONGEST_TALK.plusSeconds(1));
        sender(smtp).sendDue();
        sender(smtp).sendDue();
        assertThat(now(message).state()).isEqualTo(State.UNCERTAIN);
        only();

        outbox.sendAgain(now(message), Outbox.act(office(), "mail.sent-again", message), 1);
        sender(smtp).sendDue();
        assertThat(now(message).state()).isEqualTo(State.SENT);
        assertThat(arrived())
                .as("because a person said so")
                .hasSize(2)
                .allSatisfy(one -> assertThat(one.getHeader("Message-ID")).containsExactly(message.messageId()));
    }

    /** The sender dies before the server hears of the message: that looks the same afterwards. */
    @Test
    void whatWasTakenAndNotSentIsUncertainToo() throws Exception {
        Message message = write();
        assertThatThrownBy(() -> sender(posting -> {
                            throw new Killed();
                        })
                        .sendDue())
                .isInstanceOf(Killed.class);
        clock.goOn(Dispatch.LONGEST_TALK.plusSeconds(1));
        sender(smtp()).sendDue();
        assertThat(now(message).state()).isEqualTo(State.UNCERTAIN);
        assertThat(arrived()).isEmpty();
    }

    @Test
    void aSenderThatWasGivenUpTooEarlyKnowsBetter() {
        Message message = write();
        PostOffice smtp = smtp();
        sender(posting -> {
                    clock.goOn(Dispatch.LONGEST_TALK.plusSeconds(1));
                    sender(smtp).sendDue();
                    assertThat(now(message).state()).isEqualTo(State.UNCERTAIN);
                    smtp.send(posting);
                })
                .sendDue();
        assertThat(now(message).state()).isEqualTo(State.SENT);
    }

    @Test
    void anAttemptThatWasGivenUpSaysNothingOfTheNextOne() {
        Message message = write();
        sender(posting -> {
                    clock.goOn(Dispatch.LONGEST_TALK.plusSeconds(1));
                    sender(smtp()).sendDue();
                    outbox.sendAgain(now(message), Outbox.act(office(), "mail.sent-again", message), 1);
                    assertThatThrownBy(() -> sender(second -> {
                                        throw new Killed();
                                    })
                                    .sendDue())
                            .isInstanceOf(Killed.class);
                })
                .sendDue();
        assertThat(now(message).attempts()).isEqualTo(2);
        assertThat(now(message).state()).isEqualTo(State.SENDING);
    }

    @Test
    void twoSendersAtOnceSendEachMessageOnce() throws Exception {
        List<Message> all = IntStream.range(0, 30).mapToObj(number -> write()).toList();
        ExecutorService threads = Executors.newFixedThreadPool(3);
        try {
            CountDownLatch start = new CountDownLatch(1);
            List<Future<?>> senders = IntStream.range(0, 3)
                    .<Future<?>>mapToObj(number -> threads.submit(() -> {
                        start.await();
                        sender(smtp()).sendDue();
                        return null;
                    }))
                    .toList();
            start.countDown();
            for (Future<?> sender : senders) {
                sender.get();
            }
        } finally {
            threads.shutdownNow();
        }
        assertThat(arrived().stream().map(SenderTests::id))
                .containsExactlyInAnyOrderElementsOf(
                        all.stream().map(Message::messageId).toList());
    }

    @Test
    void whileTheServerIsDownMailWaitsLongerAndLonger() throws Exception {
        Message message = write();
        int port = server.getSmtp().getPort();
        server.stop();
        PostOffice smtp = new Smtp(client(port), "rollbook@portal.example");
        long[] pauses = {1, 2, 4, 8, 16, 32, 60, 60};
        for (long pause : pauses) {
            sender(smtp).sendDue();
            Message waiting = now(message);
            assertThat(waiting.state()).isEqualTo(State.WAITING);
            assertThat(waiting.failure()).isNotBlank();
            assertThat(Duration.between(clock.instant(), waiting.notBefore()).toSeconds())
                    .isBetween(pause * 60 - 1, pause * 60);
            int attempts = waiting.attempts();
            sender(smtp).sendDue();
            assertThat(now(message).attempts()).as("not before its time").isEqualTo(attempts);
            clock.goOn(Duration.ofMinutes(pause));
        }
        GreenMail back = new GreenMail(new ServerSetup(port, "127.0.0.1", ServerSetup.PROTOCOL_SMTP));
        back.start();
        try {
            sender(smtp).sendDue();
            assertThat(back.getReceivedMessages()).hasSize(1);
            assertThat(now(message).state()).isEqualTo(State.SENT);
            assertThat(now(message).failure()).isEmpty();
        } finally {
            back.stop();
        }
    }

    @Test
    void mailThatWaitedTooLongIsNotSentAnyMore() throws Exception {
        Message message = write();
        clock.goOn(Kind.DIGEST.useful.plusSeconds(60));
        sender(smtp()).sendDue();
        assertThat(now(message).state()).isEqualTo(State.EXPIRED);
        assertThat(arrived()).isEmpty();
    }

    @ParameterizedTest(name = "{0} answered {1}: {2}")
    @CsvSource({
        // RFC 5321, 4.2.1: the first digit says for now or for good.
        "RCPT, 550 5.1.1 no such mailbox, FAILED, no such mailbox",
        "RCPT, 450 4.2.0 try later, WAITING, try later",
        "MAIL, 553 5.1.8 unknown sender, FAILED, unknown sender",
        "MAIL, 421 4.3.2 closing, WAITING, closing",
        "DATA, 451 4.7.1 greylisted, WAITING, greylisted",
        "., 554 5.7.1 content not wanted, FAILED, content not wanted",
        "., 452 4.3.1 disk full, WAITING, disk full",
    })
    void whatTheServerSaysDecides(String command, String reply, State state, String says) throws Exception {
        Message message = write();
        try (ScriptedServer refusing = new ScriptedServer(Map.of(command, reply))) {
            sender(new Smtp(refusing.client(), "rollbook@portal.example")).sendDue();
            assertThat(refusing.heard()).contains(command);
        }
        assertThat(now(message).state()).isEqualTo(state);
        assertThat(now(message).failure()).contains(says);
        clock.goOn(Duration.ofMinutes(1));
        sender(smtp()).sendDue();
        assertThat(arrived()).hasSize(state == State.WAITING ? 1 : 0);
    }

    @ParameterizedTest(name = "the server hangs up at {0}")
    @CsvSource({"'', WAITING", "EHLO, WAITING", "MAIL, UNCERTAIN", "., UNCERTAIN"})
    void aTalkThatBreaksOffIsUncertainOnceItWasAboutTheMessage(String command, State state) throws Exception {
        Message message = write();
        try (ScriptedServer hangingUp = new ScriptedServer(Map.of(command, ""))) {
            sender(new Smtp(hangingUp.client(), "rollbook@portal.example")).sendDue();
        }
        assertThat(now(message).state()).isEqualTo(state);
    }

    @Test
    void aMessageThatIsRefusedKeepsNoOtherBack() throws Exception {
        Message refused = write();
        Message taken = write();
        PostOffice smtp = smtp();
        sender(posting -> {
                    if (posting.messageId().equals(refused.messageId())) {
                        throw new Undelivered(Undelivered.How.REFUSED, "550 no", new Exception());
                    }
                    smtp.send(posting);
                })
                .sendDue();
        assertThat(now(refused).state()).isEqualTo(State.FAILED);
        assertThat(now(taken).state()).isEqualTo(State.SENT);
    }

    @Test
    void withoutAServerMailIsKept() {
        Message message = write();
        sender(null).sendDue();
        assertThat(now(message)).isEqualTo(message);
    }

    @Test
    void whoLeftOrWantsItNoMoreGetsNothing() throws Exception {
        Message unwanted = write();
        subscriptions.end(office(), Kind.DIGEST);
        sender(smtp()).sendDue();
        assertThat(now(unwanted).state()).isEqualTo(State.WITHDRAWN);
        assertThat(now(unwanted).failure()).isEqualTo("NOT_WANTED");

        subscriptions.choose(office(), new Subscription(true, true, true, false, 1));
        Message late = write();
        jdbc.sql("delete from production_member where person_id = ?")
                .param(office().personId())
                .update();
        sender(smtp()).sendDue();
        assertThat(now(late).state()).isEqualTo(State.WITHDRAWN);
        assertThat(now(late).failure()).isEqualTo("NO_ADDRESS");
        assertThat(arrived()).isEmpty();
    }

    @Test
    void quietHoursHoldItBackEvenIfTheyWereChosenLater() throws Exception {
        Message message = write();
        LocalTime now = LocalTime.ofInstant(clock.instant(), ZoneId.of("UTC"));
        jdbc.sql("update mail_recipient set zone = 'UTC', quiet_from = ?, quiet_until = ? where person_id = ?")
                .params(
                        java.sql.Time.valueOf(now.minusMinutes(30).withNano(0)),
                        java.sql.Time.valueOf(now.plusMinutes(30).withNano(0)),
                        office().personId())
                .update();
        sender(smtp()).sendDue();
        assertThat(now(message).state()).isEqualTo(State.WAITING);
        assertThat(arrived()).isEmpty();
        clock.goOn(Duration.ofMinutes(31));
        sender(smtp()).sendDue();
        only();
    }

    private static final class Killed extends Error {
        private static final long serialVersionUID = 1;
    }

    private Membership office() {
        return production.as(Role.OFFICE);
    }

    private String address() {
        return "office@" + production.code.toLowerCase(java.util.Locale.ROOT) + ".example";
    }

    private Message write() {
        String about = "day:" + UUID.randomUUID();
        outbox.write(
                subscriptions.addressee(production.id, office().personId()).orElseThrow(),
                Kind.DIGEST,
                LETTER,
                List.of(about));
        UUID id = jdbc.sql("select message_id from mail_told where about = ?")
                .param(about)
                .query(UUID.class)
                .single();
        // Rows are written by the portal's clock, a moment ahead of the test's.
        Instant written = clock.instant();
        jdbc.sql("update mail_message set not_before = ? where id = ? and not_before > ?")
                .params(java.sql.Timestamp.from(written), id, java.sql.Timestamp.from(written))
                .update();
        return outbox.get(production.id, id);
    }

    private Message now(Message message) {
        return outbox.get(production.id, message.id());
    }

    private PostOffice smtp() {
        return new Smtp(client(server.getSmtp().getPort()), "Rollbook <rollbook@portal.example>");
    }

    private static JavaMailSenderImpl client(int port) {
        JavaMailSenderImpl client = new JavaMailSenderImpl();
        client.setHost("127.0.0.1");
        client.setPort(port);
        return client;
    }

    private Sender sender(PostOffice office) {
        return new Sender(new Dispatch(jdbc, clock), envelopes, recipients, subscriptions, office, transaction, clock);
    }

    private List<MimeMessage> arrived() {
        return Arrays.stream(server.getReceivedMessages())
                .filter(message -> to(message).equals(address()))
                .toList();
    }

    private MimeMessage only() {
        assertThat(arrived()).hasSize(1);
        return arrived().get(0);
    }

    private static String to(MimeMessage message) {
        try {
            return message.getAllRecipients()[0].toString();
        } catch (jakarta.mail.MessagingException e) {
            throw new AssertionError(e);
        }
    }

    private static String id(MimeMessage message) {
        try {
            return message.getMessageID();
        } catch (jakarta.mail.MessagingException e) {
            throw new AssertionError(e);
        }
    }

    /** The texts, however deep they lie. */
    private static List<String> parts(jakarta.mail.Part part) throws Exception {
        if (part.getContent() instanceof jakarta.mail.Multipart several) {
            List<String> all = new java.util.ArrayList<>();
            for (int i = 0; i < several.getCount(); i++) {
                all.addAll(parts(several.getBodyPart(i)));
            }
            return all;
        }
        return List.of(String.valueOf(part.getContent()));
    }
}
