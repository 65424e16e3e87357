package rollbook.production;

import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.people.People;
import rollbook.people.SignedInPerson;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** Who belongs to which production, and in what roles. */
@Repository
public class Memberships {
    private final JdbcClient jdbc;
    private final People people;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;

    Memberships(JdbcClient jdbc, People people, AuditTrail trail, ApplicationEventPublisher events) {
        this.jdbc = jdbc;
        this.people = people;
        this.trail = trail;
        this.events = events;
    }

    Optional<Membership> find(SignedInPerson person, String productionCode) {
        return jdbc.sql("""
                        select p.id, p.code, p.name, p.time_zone, p.currency, string_agg(m.role, ',') as roles
                        from production_production p join production_member m on m.production_id = p.id
                        where p.code = upper(?) and m.person_id = ?
                        group by p.id
                        """)
                .params(productionCode, person.id())
                .query((row, number) -> new Membership(
                        row.getObject("id", UUID.class),
                        row.getString("code"),
                        row.getString("name"),
                        ZoneId.of(row.getString("time_zone")),
                        row.getString("currency"),
                        person.id(),
                        person.displayName(),
                        roles(row.getString("roles"))))
                .optional();
    }

    /** What a person is in a production, for what is read without signing in; empty if they don't belong to it. */
    public Optional<Membership> of(UUID productionId, UUID personId) {
        return jdbc.sql("""
                        select p.code, p.name, p.time_zone, p.currency, e.display_name, string_agg(m.role, ',') as roles
                        from production_member m
                        join production_production p on p.id = m.production_id
                        join people_person e on e.id = m.person_id
                        where m.production_id = ? and m.person_id = ?
                        group by p.id, e.id
                        """)
                .params(productionId, personId)
                .query((row, number) -> new Membership(
                        productionId,
                        row.getString("code"),
                        row.getString("name"),
                        ZoneId.of(row.getString("time_zone")),
                        row.getString("currency"),
                        personId,
                        row.getString("display_name"),
                        roles(row.getString("roles"))))
                .optional();
    }

    List<OwnProduction> productionsOf(UUID personId) {
        return jdbc.sql("""
                        select p.code, p.name from production_production p
                        where exists (select 1 from production_member m where m.production_id = p.id and m.person_id = ?)
                        order by p.created_at desc
                        """).param(personId).query(OwnProduction.class).list();
    }

    List<Member> members(UUID productionId) {
        return jdbc.sql("""
                        select e.id, e.sign_in_name, e.display_name, string_agg(m.role, ',') as roles
                        from production_member m join people_person e on e.id = m.person_id
                        where m.production_id = ? group by e.id order by lower(e.display_name)
                        """)
                .param(productionId)
                .query((row, number) -> new Member(
                        row.getObject("id", UUID.class),
                        row.getString("sign_in_name"),
                        row.getString("display_name"),
                        roles(row.getString("roles"))))
                .list();
    }

    Member member(UUID productionId, UUID personId) {
        return members(productionId).stream()
                .filter(member -> member.id().equals(personId))
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }

    boolean administersAny(UUID personId) {
        return jdbc.sql(
                        "select exists (select 1 from production_member where person_id = ? and role = 'ADMINISTRATOR')")
                .param(personId)
                .query(Boolean.class)
                .single();
    }

    /** Makes an account and gives it roles; the first password is told here once and kept nowhere. */
    @Transactional
    People.NewAccount addNew(Membership by, String signInName, String displayName, Set<Role> roles) {
        People.NewAccount account = people.addWithFirstPassword(signInName, displayName);
        add(by, account.id(), signInName, roles);
        return account;
    }

    /** @throws Refusal if the person belongs to the production already */
    @Transactional
    public void add(Membership by, UUID personId, String signInName, Set<Role> roles) {
        changeRoles(by, personId, Set.of(), roles);
        trail.add(by.act("member.added", "person", signInName, names(roles)));
    }

    /**
     * Gives a member exactly these roles.
     *
     * @param before the roles that the change was decided on
     * @throws Refusal if the roles changed meanwhile, or nobody would be left to administer the production
     */
    @Transactional
    void setRoles(Membership by, UUID personId, Set<Role> before, Set<Role> roles) {
        Member member = member(by.productionId(), personId);
        changeRoles(by, personId, before, roles);
        trail.add(by.act("member.changed", "person", member.signInName(), names(roles)));
    }

    /** @throws Refusal if nobody would be left to administer the production */
    @Transactional
    void remove(Membership by, UUID personId) {
        Member member = member(by.productionId(), personId);
        changeRoles(by, personId, member.roles(), Set.of());
        trail.add(by.act("member.removed", "person", member.signInName(), ""));
        events.publishEvent(new MemberRemoved(by.productionId(), personId));
    }

    /**
     * Gives a member a new password, told here once.
     *
     * @throws Refusal if the person also belongs to a production that {@code by} does not administer: the password
     *     opens that one too
     */
    @Transactional
    String renewPassword(Membership by, UUID personId) {
        Member member = member(by.productionId(), personId);
        boolean elsewhere = jdbc.sql("""
                        select exists (select 1 from production_member m where m.person_id = :person and not exists (
                            select 1 from production_member a where a.production_id = m.production_id
                            and a.person_id = :by and a.role = 'ADMINISTRATOR'))
                        """)
                .param("person", personId)
                .param("by", by.personId())
                .query(Boolean.class)
                .single();
        if (elsewhere) {
            throw new Refusal("production.refused.password-elsewhere", member.displayName());
        }
        trail.add(by.act("member.password-renewed", "person", member.signInName(), ""));
        return people.renewPassword(personId);
    }

    private void changeRoles(Membership by, UUID personId, Set<Role> before, Set<Role> roles) {
        UUID production = by.productionId();
        // One change of roles at a time, so that two administrators can't remove each other.
        jdbc.sql("select id from production_production where id = ? for update")
                .param(production)
                .query(UUID.class)
                .single();
        Set<Role> found = EnumSet.noneOf(Role.class);
        found.addAll(jdbc.sql("delete from production_member where production_id = ? and person_id = ? returning role")
                .params(production, personId)
                .query((row, number) -> Role.valueOf(row.getString("role")))
                .list());
        if (!found.equals(before)) {
            throw new Refusal("production.refused.changed-meanwhile");
        }
        for (Role role : roles) {
            jdbc.sql("insert into production_member (production_id, person_id, role) values (?, ?, ?)")
                    .params(production, personId, role.name())
                    .update();
        }
        requireAdministrator(production);
    }

    private void requireAdministrator(UUID productionId) {
        boolean administered = jdbc.sql(
                        "select exists (select 1 from production_member where production_id = ? and role = 'ADMINISTRATOR')")
                .param(productionId)
                .query(Boolean.class)
                .single();
        if (!administered) {
            throw new Refusal("production.refused.last-administrator");
        }
    }

    private static String names(Set<Role> roles) {
        return roles.stream().sorted().map(Role::name).collect(Collectors.joining(", "));
    }

    private static Set<Role> roles(String names) {
        return Stream.of(names.split(","))
                .map(Role::valueOf)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Role.class)));
    }

    record OwnProduction(String code, String name) {}

    record Member(UUID id, String signInName, String displayName, Set<Role> roles) {}
}
