package rollbook.production;

import java.time.ZoneId;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Transactional;
import rollbook.people.SignedInPerson;
import rollbook.web.Refusal;

/** Who belongs to which production, and in what roles. */
@Repository
class Memberships {
    private final JdbcClient jdbc;

    Memberships(JdbcClient jdbc) {
        this.jdbc = jdbc;
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

    /**
     * Gives a person exactly these roles; none of them takes the person off the production.
     *
     * @throws Refusal if the production would be left without an administrator
     */
    @Transactional
    public void setRoles(UUID productionId, UUID personId, Set<Role> roles) {
        // One change of roles at a time, so that two administrators can't remove each other.
        jdbc.sql("select id from production_production where id = ? for update")
                .param(productionId)
                .query(UUID.class)
                .single();
        jdbc.sql("delete from production_member where production_id = ? and person_id = ?")
                .params(productionId, personId)
                .update();
        for (Role role : roles) {
            jdbc.sql("insert into production_member (production_id, person_id, role) values (?, ?, ?)")
                    .params(productionId, personId, role.name())
                    .update();
        }
        boolean administered = jdbc.sql(
                        "select exists (select 1 from production_member where production_id = ? and role = 'ADMINISTRATOR')")
                .param(productionId)
                .query(Boolean.class)
                .single();
        if (!administered) {
            throw new Refusal("production.refused.last-administrator");
        }
    }

    private static Set<Role> roles(String names) {
        return Stream.of(names.split(","))
                .map(Role::valueOf)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Role.class)));
    }

    record OwnProduction(String code, String name) {}

    record Member(UUID id, String signInName, String displayName, Set<Role> roles) {}
}
