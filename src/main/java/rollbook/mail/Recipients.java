package rollbook.mail;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.Act;
import rollbook.audit.AuditTrail;
import rollbook.people.SignedInPerson;
import rollbook.web.Refusal;
import rollbook.web.Secret;

/** People's addresses and quiet hours: each person's own affair, for all of their productions. */
@Service
public class Recipients {
    /** How long a link that confirms an address works. */
    static final Duration CODE_WORKS_FOR = Duration.ofDays(1);
    /** Nobody has strangers flooded with confirmations. */
    private static final int CONFIRMATIONS_A_DAY = 5;

    private static final String COLUMNS = """
            r.address, r.confirmed_at, r.wanted_address, r.code_until, r.portal, r.zone, r.quiet_from, r.quiet_until, r.wakes, r.version
            """;

    private final JdbcClient jdbc;
    private final Outbox outbox;
    private final AuditTrail trail;
    private final Clock clock;

    Recipients(JdbcClient jdbc, Outbox outbox, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.outbox = outbox;
        this.trail = trail;
        this.clock = clock;
    }

    /** Empty for who never said anything about mail. */
    Optional<Recipient> of(UUID personId) {
        return jdbc.sql("select " + COLUMNS + " from mail_recipient r where r.person_id = ?")
                .param(personId)
                .query(Recipients::recipient)
                .optional();
    }

    /**
     * Asks at an address whether it is the person's; their mail goes where it went until they say yes.
     *
     * @param portal the portal's address as the person opened it
     * @param zone where they are, if nothing is known of them yet
     * @param version of what the person saw, 0 if there was nothing
     * @throws Refusal if it changed meanwhile, or too many confirmations were asked for today
     */
    @Transactional
    void want(SignedInPerson person, String address, String portal, ZoneId zone, int version) {
        keep(person.id(), zone, portal, version);
        if (outbox.confirmationsSince(person.id(), clock.instant().minus(Duration.ofDays(1))) >= CONFIRMATIONS_A_DAY) {
            throw new Refusal("mail.refused.too-many-confirmations");
        }
        jdbc.sql("""
                        update mail_recipient set wanted_address = ?, code_sha256 = null, code_until = null where person_id = ?
                        """).params(address, person.id()).update();
        outbox.askToConfirm(person.id(), person.displayName(), address);
        trail.add(act(person, "mail.address-asked"));
    }

    /** Gives up the address, the one that waits to be confirmed too: no mail comes any more. */
    @Transactional
    void forget(SignedInPerson person, int version) {
        int forgotten = jdbc.sql("""
                        update mail_recipient set address = null, confirmed_at = null, wanted_address = null,
                            code_sha256 = null, code_until = null, version = version + 1
                        where person_id = ? and version = ?
                        """).params(person.id(), version).update();
        if (forgotten == 0) {
            throw changed();
        }
        trail.add(act(person, "mail.address-forgotten"));
    }

    /** @param from null together with {@code until} for none */
    @Transactional
    void keepQuiet(
            SignedInPerson person,
            String portal,
            ZoneId zone,
            @Nullable LocalTime from,
            @Nullable LocalTime until,
            boolean wakes,
            int version) {
        keep(person.id(), zone, portal, version);
        jdbc.sql("""
                        update mail_recipient set zone = :zone, quiet_from = :from, quiet_until = :until, wakes = :wakes
                        where person_id = :person
                        """)
                .param("zone", zone.getId())
                .param("from", from, Types.TIME)
                .param("until", until, Types.TIME)
                .param("wakes", wakes)
                .param("person", person.id())
                .update();
        trail.add(act(person, "mail.quiet-hours-changed"));
    }

    private void keep(UUID personId, ZoneId zone, String portal, int version) {
        int kept = jdbc.sql("""
                        insert into mail_recipient as old (person_id, portal, zone)
                        select :person, :portal, :zone where :version = 0 or exists (select 1 from mail_recipient where person_id = :person)
                        on conflict (person_id) do update set portal = excluded.portal, version = old.version + 1
                        where old.version = :version
                        """)
                .param("person", personId)
                .param("portal", portal)
                .param("zone", zone.getId())
                .param("version", version)
                .update();
        if (kept == 0) {
            throw changed();
        }
    }

    /** A new code, for the link in a confirmation that is being sent; the one before it doesn't work any more. */
    Secret renewCode(UUID personId) {
        Secret code = Secret.fresh();
        jdbc.sql("update mail_recipient set code_sha256 = ?, code_until = ? where person_id = ?")
                .params(code.sha256(), Timestamp.from(clock.instant().plus(CODE_WORKS_FOR)), personId)
                .update();
        return code;
    }

    /** The address that a code confirms, if the code is that person's and still works. */
    Optional<String> wantedBy(UUID personId, Secret code) {
        return jdbc.sql(
                        "select wanted_address from mail_recipient where person_id = ? and code_sha256 = ? and code_until > ?")
                .params(personId, code.sha256(), Timestamp.from(clock.instant()))
                .query(String.class)
                .optional();
    }

    /**
     * Uses the code up; from then on the person's mail goes to the address it confirms.
     *
     * @throws Refusal if the code isn't the person's, or works no more
     */
    @Transactional
    void confirm(SignedInPerson person, Secret code) {
        Timestamp now = Timestamp.from(clock.instant());
        int confirmed = jdbc.sql("""
                        update mail_recipient set address = wanted_address, confirmed_at = :now, wanted_address = null,
                            code_sha256 = null, code_until = null, version = version + 1
                        where person_id = :person and code_sha256 = :code and code_until > :now and wanted_address is not null
                        """)
                .param("now", now)
                .param("person", person.id())
                .param("code", code.sha256())
                .update();
        if (confirmed == 0) {
            throw new Refusal("mail.refused.code");
        }
        trail.add(act(person, "mail.address-confirmed"));
    }

    /** Keeps an address that is known to be the person's, without asking there. */
    public void keepKnown(UUID personId, String address, ZoneId zone) {
        jdbc.sql("""
                        insert into mail_recipient (person_id, address, confirmed_at, portal, zone) values (?, ?, ?, '', ?)
                        on conflict (person_id) do nothing
                        """)
                .params(personId, address, Timestamp.from(clock.instant()), zone.getId())
                .update();
    }

    private static Act act(SignedInPerson person, String action) {
        return new Act(null, person.id(), person.displayName(), action, "person", person.getUsername(), "");
    }

    private static Refusal changed() {
        return new Refusal("mail.refused.changed-meanwhile");
    }

    static Recipient recipient(ResultSet row, int number) throws SQLException {
        return new Recipient(
                row.getString("address"),
                instant(row, "confirmed_at"),
                row.getString("wanted_address"),
                instant(row, "code_until"),
                row.getString("portal"),
                ZoneId.of(row.getString("zone")),
                row.getObject("quiet_from", LocalTime.class),
                row.getObject("quiet_until", LocalTime.class),
                row.getBoolean("wakes"),
                row.getInt("version"));
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        Timestamp at = row.getTimestamp(column);
        return at == null ? null : at.toInstant();
    }
}
