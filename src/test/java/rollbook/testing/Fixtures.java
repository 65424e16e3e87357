package rollbook.testing;

import java.time.ZoneId;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.production.Membership;
import rollbook.production.Productions;
import rollbook.production.Role;

/** Makes productions for tests, each of its own, with one person per role. */
public class Fixtures {
    private static final AtomicInteger NEXT = new AtomicInteger();

    final JdbcClient jdbc;
    private final Productions productions;
    private final UserDetailsService people;
    private final TransactionTemplate transaction;

    Fixtures(JdbcClient jdbc, Productions productions, UserDetailsService people, TransactionTemplate transaction) {
        this.jdbc = jdbc;
        this.productions = productions;
        this.people = people;
        this.transaction = transaction;
    }

    /** A fresh production in Lisbon time, with an administrator, a wrangler, an office, a post and a reader person. */
    public TestProduction production() {
        return transaction.execute(status -> {
            String code = "T" + Long.toString(System.nanoTime(), 36).toUpperCase(Locale.ROOT) + NEXT.incrementAndGet();
            code = code.substring(Math.max(0, code.length() - 12));
            if (!Character.isLetterOrDigit(code.charAt(0))) {
                code = "T" + code;
            }
            UUID administrator = person(code, Role.ADMINISTRATOR);
            UUID id = productions.create(
                    code, "Test " + code, ZoneId.of("Europe/Lisbon"), "EUR", administrator, "Administrator");
            Map<Role, Membership> members = new EnumMap<>(Role.class);
            for (Role role : Role.values()) {
                UUID person = role == Role.ADMINISTRATOR ? administrator : person(code, role);
                if (role != Role.ADMINISTRATOR) {
                    jdbc.sql("insert into production_member (production_id, person_id, role) values (?, ?, ?)")
                            .params(id, person, role.name())
                            .update();
                }
                members.put(
                        role,
                        new Membership(
                                id,
                                code,
                                "Test " + code,
                                ZoneId.of("Europe/Lisbon"),
                                "EUR",
                                person,
                                role.name(),
                                EnumSet.of(role)));
            }
            return new TestProduction(this, id, code, members);
        });
    }

    private UUID person(String code, Role role) {
        UUID id = UUID.randomUUID();
        // No password fits this hash: tests sign in through the security context, except those of the sign-in page.
        jdbc.sql(
                        "insert into people_person (id, sign_in_name, display_name, password_hash, created_at) values (?, ?, ?, 'none', now())")
                .params(id, signInName(code, role), role.name())
                .update();
        return id;
    }

    private static String signInName(String code, Role role) {
        return (role + "." + code).toLowerCase(Locale.ROOT);
    }

    UserDetails account(String code, Role role) {
        return people.loadUserByUsername(signInName(code, role));
    }
}
