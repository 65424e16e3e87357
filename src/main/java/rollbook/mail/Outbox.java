package rollbook.mail;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.Act;
import rollbook.audit.AuditTrail;
import rollbook.people.SignedInPerson;
import rollbook.production.Membership;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The messages: written in the transaction of what they tell, looked at, held back, and let go again. */
@Repository
class Outbox {
    static final String MESSAGES = """
            select m.id, m.production_id, m.person_id, e.display_name as person_name, m.kind, m.subject, m.text, m.html,
                   m.message_id, m.created_at, m.not_before, m.not_after, m.state, m.attempts, m.tried_at, m.address,
                   m.failure, m.sent_at, m.bounced_at, m.bounce
            from mail_message m join people_person e on e.id = m.person_id
            """;

    /** What somebody may have to see to. */
    static final String TROUBLE = """
            (m.state in ('UNCERTAIN', 'FAILED') or m.bounced_at is not null or m.state = 'WAITING' and m.failure <> '')
            """;

    private final JdbcClient jdbc;
    private final MailSettings settings;
    private final AuditTrail trail;
    private final Display display;
    private final Clock clock;

    Outbox(JdbcClient jdbc, MailSettings settings, AuditTrail trail, Display display, Clock clock) {
        this.jdbc = jdbc;
        this.settings = settings;
        this.trail = trail;
        this.display = display;
        this.clock = clock;
    }

    /**
     * Writes a message to somebody, unless they were told all of it before.
     *
     * @param about what it tells of, by names that stay the same; each is told to a person once
     */
    @Transactional
    boolean write(Addressee to, Kind kind, Letter letter, List<String> about) {
        UUID id = UUID.randomUUID();
        UUID production = to.membership().productionId();
        boolean anythingNew = false;
        for (String one : about) {
            anythingNew |= jdbc.sql("""
                            insert into mail_told (production_id, person_id, about, message_id) values (?, ?, ?, ?)
                            on conflict do nothing
                            """)
                            .params(production, to.membership().personId(), one, id)
                            .update()
                    > 0;
        }
        if (anythingNew) {
            Instant now = clock.instant();
            insert(
                    id,
                    production,
                    to.membership().personId(),
                    kind,
                    letter,
                    to.recipient().notBefore(kind, now));
        }
        return anythingNew;
    }

    /** The link that confirms is drawn when the message is sent. */
    void askToConfirm(UUID personId, String personName, String address) {
        jdbc.sql("""
                        update mail_message set state = 'WITHDRAWN', failure = 'ANSWERED'
                        where person_id = ? and kind = 'CONFIRMATION' and state = 'WAITING'
                        """).param(personId).update();
        Letter letter = new Letter(
                display.text("mail.confirmation.subject"),
                display.text("mail.confirmation.sentence", personName, address),
                List.of(new Letter.Part(
                        display.text("mail.confirmation.do"),
                        List.of(new Letter.Line(
                                display.text("mail.confirmation.link", Recipients.CODE_WORKS_FOR.toHours()),
                                "/account/mail/confirmation?code=" + Envelopes.CODE)))));
        insert(UUID.randomUUID(), null, personId, Kind.CONFIRMATION, letter, clock.instant());
    }

    private void insert(
            UUID id, @Nullable UUID productionId, UUID personId, Kind kind, Letter letter, Instant notBefore) {
        Instant now = clock.instant();
        jdbc.sql("""
                        insert into mail_message (id, production_id, person_id, kind, subject, text, html, message_id,
                            created_at, not_before, not_after, state)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 'WAITING')
                        """)
                .param(id)
                .param(productionId)
                .param(personId)
                .param(kind.name())
                .param(letter.subject().replaceAll("\\p{Cntrl}+", " "))
                .param(LetterText.plain(letter))
                .param(LetterText.html(letter))
                .param("<" + id + "@" + settings.domain() + ">")
                .param(Timestamp.from(now))
                .param(Timestamp.from(notBefore))
                .param(Timestamp.from((notBefore.isAfter(now) ? notBefore : now).plus(kind.useful)))
                .update();
    }

    int confirmationsSince(UUID personId, Instant since) {
        return jdbc.sql(
                        "select count(*) from mail_message where person_id = ? and kind = 'CONFIRMATION' and created_at > ?")
                .params(personId, Timestamp.from(since))
                .query(Integer.class)
                .single();
    }

    /** What a person was sent or is to be, the newest first. */
    List<Message> ofPerson(UUID personId, long offset, int limit) {
        return jdbc.sql(MESSAGES + " where m.person_id = ? order by m.created_at desc, m.id offset ? limit ?")
                .params(personId, offset, limit)
                .query(Message.class)
                .list();
    }

    long countOfPerson(UUID personId) {
        return jdbc.sql("select count(*) from mail_message where person_id = ?")
                .param(personId)
                .query(Long.class)
                .single();
    }

    /** @throws NotFoundException if the person has no such message */
    Message own(UUID personId, UUID id) {
        return jdbc.sql(MESSAGES + " where m.id = ? and m.person_id = ?")
                .params(id, personId)
                .query(Message.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /** @throws NotFoundException if this production has no such message */
    Message get(UUID productionId, UUID id) {
        return jdbc.sql(MESSAGES + " where m.id = ? and m.production_id = ?")
                .params(id, productionId)
                .query(Message.class)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    /**
     * Lets a message go (once more), whatever happened to it.
     *
     * @param attempts how often it had been tried when the person looked
     * @throws Refusal if something happened to it meanwhile
     */
    @Transactional
    void sendAgain(Message message, Act act, int attempts) {
        checkUnchanged(letGo(message, attempts));
        trail.add(act);
    }

    /**
     * Lets several messages go again: all of them, or none.
     *
     * @param seen each with how often it had been tried when the person looked
     * @throws Refusal if something happened to some of them meanwhile, naming whom they go to
     * @throws NotFoundException if this production hasn't one of them
     */
    @Transactional
    void sendAgainAll(Membership by, Map<UUID, Integer> seen) {
        List<Message> messages = seen.keySet().stream()
                .sorted()
                .map(id -> get(by.productionId(), id))
                .toList();
        List<String> changed = new ArrayList<>();
        for (Message message : messages) {
            if (letGo(message, seen.get(message.id())) == 0) {
                changed.add(message.personName());
            } else {
                trail.add(act(by, "mail.sent-again", message));
            }
        }
        if (!changed.isEmpty()) {
            throw new Refusal("mail.refused.several-changed", String.join(", ", changed), changed.size());
        }
    }

    private int letGo(Message message, int attempts) {
        Instant now = clock.instant();
        return jdbc.sql("""
                        update mail_message set state = 'WAITING', failure = '', not_before = ?, not_after = ?,
                            bounced_at = null, bounce = ''
                        where id = ? and attempts = ? and (state in ('UNCERTAIN', 'FAILED', 'EXPIRED', 'WITHDRAWN')
                            or state = 'SENT' and bounced_at is not null)
                        """)
                .params(Timestamp.from(now), Timestamp.from(now.plus(message.kind().useful)), message.id(), attempts)
                .update();
    }

    /**
     * Holds a message back.
     *
     * @throws Refusal if it doesn't wait any more
     */
    @Transactional
    void withdraw(Message message, Act act) {
        checkUnchanged(jdbc.sql("""
                        update mail_message set state = 'WITHDRAWN', failure = 'BY_HAND' where id = ? and state = 'WAITING'
                        """).param(message.id()).update());
        trail.add(act);
    }

    private static void checkUnchanged(int changed) {
        if (changed == 0) {
            throw new Refusal("mail.refused.message-changed");
        }
    }

    static Act act(Membership by, String action, Message message) {
        return by.act(action, "mail", message.personName(), message.subject());
    }

    static Act act(SignedInPerson by, String action, Message message) {
        return new Act(
                message.productionId(),
                by.id(),
                by.displayName(),
                action,
                "mail",
                message.personName(),
                message.subject());
    }

    /** Notes that a message came back; empty if we never sent one of that id. */
    @Transactional
    Optional<UUID> bounced(String messageId, String why) {
        return jdbc.sql("""
                        update mail_message set bounced_at = coalesce(bounced_at, ?), bounce = ?
                        where message_id = ? and state in ('SENT', 'UNCERTAIN', 'SENDING') returning id
                        """)
                .params(Timestamp.from(clock.instant()), why, messageId)
                .query(UUID.class)
                .optional();
    }
}
