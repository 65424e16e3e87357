package rollbook.calendar;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.MemberRemoved;
import rollbook.production.Membership;
import rollbook.web.Refusal;
import rollbook.web.Secret;

/** The secret addresses at which people's calendars are read. Each person has one in a production at most. */
@Service
public class Feeds {
    private static final String FEEDS =
            "select id, production_id, person_id, made_at, fetched_at from calendar_feed where ";

    private final JdbcClient jdbc;
    private final AuditTrail trail;
    private final Clock clock;

    Feeds(JdbcClient jdbc, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.trail = trail;
        this.clock = clock;
    }

    Optional<Feed> of(Membership owner) {
        return jdbc.sql(FEEDS + "production_id = ? and person_id = ?")
                .params(owner.productionId(), owner.personId())
                .query(Feed.class)
                .optional();
    }

    /**
     * Makes an address; the one before it leads nowhere from then on.
     *
     * @param before the address that its owner saw, null if there was none
     * @return the secret, told here once and kept nowhere
     * @throws Refusal if the address has changed meanwhile
     */
    @Transactional
    Secret make(Membership owner, @Nullable UUID before) {
        if (before != null) {
            delete(owner, before);
        }
        Secret secret = Secret.fresh();
        int made = jdbc.sql("""
                        insert into calendar_feed (id, production_id, person_id, secret_sha256, made_at)
                        values (?, ?, ?, ?, ?) on conflict on constraint calendar_feed_person_key do nothing
                        """)
                .param(UUID.randomUUID())
                .param(owner.productionId())
                .param(owner.personId())
                .param(secret.sha256())
                .param(Timestamp.from(clock.instant()))
                .update();
        if (made == 0) {
            throw new Refusal("calendar.refused.changed");
        }
        trail.add(owner.act("calendar.address-made", "calendar", owner.code(), ""));
        return secret;
    }

    /**
     * From then on the address leads nowhere.
     *
     * @param before the address that its owner saw
     * @throws Refusal if the address has changed meanwhile
     */
    @Transactional
    void revoke(Membership owner, UUID before) {
        delete(owner, before);
        trail.add(owner.act("calendar.address-revoked", "calendar", owner.code(), ""));
    }

    private void delete(Membership owner, UUID id) {
        int deleted = jdbc.sql("delete from calendar_feed where id = ? and production_id = ? and person_id = ?")
                .params(id, owner.productionId(), owner.personId())
                .update();
        if (deleted == 0) {
            throw new Refusal("calendar.refused.changed");
        }
    }

    /** The address is gone for good: it doesn't work again when the person comes back. */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void onMemberRemoved(MemberRemoved removed) {
        jdbc.sql("delete from calendar_feed where production_id = ? and person_id = ?")
                .params(removed.productionId(), removed.personId())
                .update();
    }

    /** Empty for every secret that opens nothing, for whatever reason, after the same look-up. */
    Optional<Feed> of(Secret secret) {
        return jdbc.sql(FEEDS + """
                        secret_sha256 = ? and exists (select 1 from production_member m
                            where m.production_id = calendar_feed.production_id and m.person_id = calendar_feed.person_id)
                        """).param(secret.sha256()).query(Feed.class).optional();
    }

    /** Notes that somebody reads it, to the minute. */
    void noteFetch(Feed feed) {
        Timestamp minute = Timestamp.from(clock.instant().truncatedTo(ChronoUnit.MINUTES));
        jdbc.sql("update calendar_feed set fetched_at = ? where id = ? and (fetched_at is null or fetched_at < ?)")
                .params(minute, feed.id(), minute)
                .update();
    }
}
