package rollbook.people;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
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
    public static final int PASSWORD_MAX_LENGTH = 200;
    /** What a sign-in name may look like; capitals don't tell names apart. Empty is another fault. */
    public static final String SIGN_IN_NAME = "|[A-Za-z0-9][A-Za-z0-9._@-]{1,59}";

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

    /** Makes an account with a random first password, which is told here once and kept nowhere. */
    @Transactional
    public NewAccount addWithFirstPassword(String signInName, String displayName) {
        String password = RandomCode.next();
        return new NewAccount(add(signInName, displayName, password), password);
    }

    /**
     * Changes one's own password and ends the person's other sessions.
     *
     * @param sessionId the session that goes on, or null for none
     * @return whether the old password was right; if not, nothing changes
     */
    @Transactional
    public boolean changePassword(UUID personId, String oldPassword, String newPassword, @Nullable String sessionId) {
        String hash = jdbc.sql("select password_hash from people_person where id = ? for update")
                .param(personId)
                .query(String.class)
                .single();
        if (!passwords.matches(oldPassword, hash)) {
            return false;
        }
        setPassword(personId, newPassword, sessionId);
        return true;
    }

    /** Gives the person a random new password, which is told here once and kept nowhere, and ends all their sessions. */
    @Transactional
    public String renewPassword(UUID personId) {
        String password = RandomCode.next();
        setPassword(personId, password, null);
        return password;
    }

    private void setPassword(UUID personId, String password, @Nullable String sessionId) {
        jdbc.sql("update people_person set password_hash = ? where id = ?")
                .params(passwords.encode(password), personId)
                .update();
        // Whoever got in with the old password is out.
        jdbc.sql("""
                        delete from spring_session where session_id <> coalesce(:session, '')
                        and principal_name = (select sign_in_name from people_person where id = :person)
                        """).param("session", sessionId).param("person", personId).update();
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

    /** @param password the first password, for telling it once */
    public record NewAccount(UUID id, String password) {
        /** Without the password, which belongs into no log. */
        @Override
        public String toString() {
            return "NewAccount[id=" + id + "]";
        }
    }
}
