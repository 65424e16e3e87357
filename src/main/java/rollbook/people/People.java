package rollbook.people;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.core.userdetails.UsernameNotFoundException;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.web.Refusal;

/** The people who have an account. */
@Service
public class People implements UserDetailsService {
    public static final int PASSWORD_MIN_LENGTH = 12;

    private final JdbcClient jdbc;
    private final PasswordEncoder passwords;
    private final Clock clock;

    People(JdbcClient jdbc, PasswordEncoder passwords, Clock clock) {
        this.jdbc = jdbc;
        this.passwords = passwords;
        this.clock = clock;
    }

    /**
     * Makes an account.
     *
     * @throws Refusal if the sign-in name is taken
     */
    @Transactional
    public UUID add(String signInName, String displayName, String password) {
        UUID id = UUID.randomUUID();
        int added = jdbc.sql("""
                        insert into people_person (id, sign_in_name, display_name, password_hash, created_at)
                        values (?, ?, ?, ?, ?) on conflict do nothing
                        """)
                .params(
                        id,
                        signInName.strip(),
                        displayName.strip(),
                        passwords.encode(password),
                        Timestamp.from(clock.instant()))
                .update();
        if (added == 0) {
            throw new Refusal("people.refused.name-taken", signInName.strip());
        }
        return id;
    }

    @Transactional
    public void changePassword(UUID personId, String password) {
        jdbc.sql("update people_person set password_hash = ? where id = ?")
                .params(passwords.encode(password), personId)
                .update();
    }

    public Optional<UUID> findBySignInName(String signInName) {
        return jdbc.sql("select id from people_person where lower(sign_in_name) = lower(?)")
                .param(signInName.strip())
                .query(UUID.class)
                .optional();
    }

    public boolean isEmpty() {
        return jdbc.sql("select not exists (select 1 from people_person)")
                .query(Boolean.class)
                .single();
    }

    @Override
    public UserDetails loadUserByUsername(String signInName) {
        return jdbc.sql(
                        "select id, sign_in_name, display_name, password_hash from people_person where lower(sign_in_name) = lower(?)")
                .param(signInName.strip())
                .query((row, number) -> new SignedInPerson(
                        row.getObject("id", UUID.class),
                        row.getString("sign_in_name"),
                        row.getString("display_name"),
                        row.getString("password_hash")))
                .optional()
                .orElseThrow(() -> new UsernameNotFoundException("no such account"));
    }
}
