package rollbook.mail;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.StringJoiner;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.MemberRemoved;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Refusal;

/** What each member of a production is told by mail, and who is to be told. */
@Service
public class Subscriptions {
    private static final String COLUMNS = "s.digest, s.alarms, s.weekly, s.muted, s.version as chosen";

    private static final String ADDRESSEES = """
            select p.id as production_id, p.code, p.name, p.time_zone, p.currency, e.id as person_id, e.display_name,
                   string_agg(m.role, ',') as roles, r.address, r.confirmed_at, r.wanted_address, r.code_until, r.portal,
                   r.zone, r.quiet_from, r.quiet_until, r.wakes, r.version,
            """ + COLUMNS + """

            from production_member m
            join production_production p on p.id = m.production_id
            join people_person e on e.id = m.person_id
            join mail_recipient r on r.person_id = m.person_id and r.address is not null
            left join mail_subscription s on s.production_id = m.production_id and s.person_id = m.person_id
            where m.production_id = :production and (:person::uuid is null or m.person_id = :person)
            group by p.id, e.id, r.person_id, s.production_id, s.person_id
            order by e.display_name, e.id
            """;

    private final JdbcClient jdbc;
    private final AuditTrail trail;

    Subscriptions(JdbcClient jdbc, AuditTrail trail) {
        this.jdbc = jdbc;
        this.trail = trail;
    }

    Subscription of(Membership member) {
        return jdbc.sql("select " + COLUMNS + " from mail_subscription s where production_id = ? and person_id = ?")
                .params(member.productionId(), member.personId())
                .query((row, number) -> subscription(row, member.roles()))
                .optional()
                .orElseGet(() -> Subscription.usual(member.roles()));
    }

    /** A person's production and what they are told of it. */
    record Own(String code, String name, ZoneId zone, Subscription subscription) {}

    /** The newest production first. */
    List<Own> all(UUID personId) {
        return jdbc.sql("select p.code, p.name, p.time_zone, string_agg(m.role, ',') as roles, " + COLUMNS + """

                        from production_member m
                        join production_production p on p.id = m.production_id
                        left join mail_subscription s on s.production_id = m.production_id and s.person_id = m.person_id
                        where m.person_id = ?
                        group by p.id, s.production_id, s.person_id order by p.created_at desc, p.code
                        """)
                .param(personId)
                .query((row, number) -> new Own(
                        row.getString("code"),
                        row.getString("name"),
                        ZoneId.of(row.getString("time_zone")),
                        subscription(row, roles(row))))
                .list();
    }

    /**
     * @param chosen with the version that the member saw
     * @throws Refusal if it was changed meanwhile
     */
    @Transactional
    void choose(Membership by, Subscription chosen) {
        if (!keep(by, chosen)) {
            throw new Refusal("mail.refused.changed-meanwhile");
        }
        trail.add(by.act("mail.chosen", "mail", by.code(), onRecord(chosen)));
    }

    /** Ends mail of a kind, however it was chosen; does nothing for who gets none. */
    @Transactional
    void end(Membership member, Kind kind) {
        for (Subscription now = of(member); now.wants(kind); now = of(member)) {
            if (keep(member, now.without(kind))) {
                trail.add(member.act("mail.ended", "mail", member.code(), kind.name()));
            }
        }
    }

    private boolean keep(Membership by, Subscription chosen) {
        return jdbc.sql("""
                        insert into mail_subscription as old (production_id, person_id, digest, alarms, weekly, muted, version)
                        select :production, :person, :digest, :alarms, :weekly, :muted, :version + 1
                        where :version = 0 or exists (
                            select 1 from mail_subscription where production_id = :production and person_id = :person)
                        on conflict (production_id, person_id) do update set digest = excluded.digest, alarms = excluded.alarms,
                            weekly = excluded.weekly, muted = excluded.muted, version = excluded.version
                        where old.version = :version
                        """)
                        .param("production", by.productionId())
                        .param("person", by.personId())
                        .param("digest", chosen.digest())
                        .param("alarms", chosen.alarms())
                        .param("weekly", chosen.weekly())
                        .param("muted", chosen.muted())
                        .param("version", chosen.version())
                        .update()
                > 0;
    }

    private static String onRecord(Subscription chosen) {
        StringJoiner words = new StringJoiner(", ").setEmptyValue("none");
        Stream.of(Kind.DIGEST, Kind.ALARM, Kind.WEEKLY)
                .filter(chosen::wants)
                .map(Kind::name)
                .forEach(words::add);
        return words.toString();
    }

    /** Who belongs to a production and has a confirmed address. */
    List<Addressee> addressees(UUID productionId) {
        return addressees(productionId, null);
    }

    Optional<Addressee> addressee(UUID productionId, UUID personId) {
        return addressees(productionId, personId).stream().findFirst();
    }

    private List<Addressee> addressees(UUID productionId, @Nullable UUID personId) {
        return jdbc.sql(ADDRESSEES)
                .param("production", productionId)
                .param("person", personId)
                .query((row, number) -> new Addressee(
                        new Membership(
                                row.getObject("production_id", UUID.class),
                                row.getString("code"),
                                row.getString("name"),
                                ZoneId.of(row.getString("time_zone")),
                                row.getString("currency"),
                                row.getObject("person_id", UUID.class),
                                row.getString("display_name"),
                                roles(row)),
                        Recipients.recipient(row, number),
                        subscription(row, roles(row))))
                .list();
    }

    /** They choose anew when they come back. */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void onMemberRemoved(MemberRemoved removed) {
        jdbc.sql("delete from mail_subscription where production_id = ? and person_id = ?")
                .params(removed.productionId(), removed.personId())
                .update();
    }

    private static Subscription subscription(ResultSet row, Set<Role> roles) throws SQLException {
        int chosen = row.getInt("chosen");
        return row.wasNull()
                ? Subscription.usual(roles)
                : new Subscription(
                        row.getBoolean("digest"),
                        row.getBoolean("alarms"),
                        row.getBoolean("weekly"),
                        row.getBoolean("muted"),
                        chosen);
    }

    private static Set<Role> roles(ResultSet row) throws SQLException {
        return Stream.of(row.getString("roles").split(","))
                .map(Role::valueOf)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Role.class)));
    }
}
