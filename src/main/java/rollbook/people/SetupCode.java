package rollbook.people;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.Locale;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.crypto.password.PasswordEncoder;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * The one-time code that opens the set-up page while there is no account. Only who can read the log has it. Each start
 * makes a new one, so the newest log always tells the one that works.
 */
@Component
public class SetupCode {
    private static final Logger log = LoggerFactory.getLogger(SetupCode.class);

    private final JdbcClient jdbc;
    private final People people;
    private final PasswordEncoder hashes;
    private final Clock clock;

    SetupCode(JdbcClient jdbc, People people, PasswordEncoder hashes, Clock clock) {
        this.jdbc = jdbc;
        this.people = people;
        this.hashes = hashes;
        this.clock = clock;
    }

    @EventListener(ApplicationReadyEvent.class)
    @Order(100)
    void print() {
        if (people.isEmpty()) {
            log.info("No account yet. Open /set-up and give this one-time code: {}", renew());
        }
    }

    @Transactional
    public String renew() {
        String code = RandomCode.next();
        jdbc.sql("""
                        insert into people_setup_code (code_hash, created_at) values (?, ?)
                        on conflict (only_row) do update set code_hash = excluded.code_hash, created_at = excluded.created_at
                        """)
                .params(hashes.encode(code), Timestamp.from(clock.instant()))
                .update();
        return code;
    }

    /**
     * Uses the code up.
     *
     * @return whether it was the right one; the row stays locked until the transaction ends, so two people with the
     *     same code get one set-up
     */
    @Transactional
    public boolean use(String code) {
        boolean right = jdbc.sql("select code_hash from people_setup_code for update")
                .query(String.class)
                .optional()
                .filter(hash -> hashes.matches(code.strip().toUpperCase(Locale.ROOT), hash))
                .isPresent();
        if (right) {
            jdbc.sql("delete from people_setup_code").update();
        }
        return right;
    }
}
