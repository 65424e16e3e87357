package rollbook.verification;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.UUID;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.Application;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.TestProduction;

/** The portal as it is operated, with its own PostgreSQL, in a data folder of its own. */
record Portal(ConfigurableApplicationContext context) implements AutoCloseable {
    static final String ROLL = "A014";

    static Portal start(Path folder, Class<?>... more) {
        Path data = folder.resolve("data-" + ProcessHandle.current().pid());
        return new Portal(new SpringApplicationBuilder(Application.class, Fixtures.class)
                .sources(more)
                .run(
                        "--rollbook.data=" + data,
                        "--rollbook.jobs.enabled=false",
                        "--server.port=0",
                        "--spring.main.banner-mode=off",
                        "--logging.level.root=error"));
    }

    <T> T get(Class<T> type) {
        return context.getBean(type);
    }

    JdbcClient jdbc() {
        return get(JdbcClient.class);
    }

    int port() {
        return context.getEnvironment().getRequiredProperty("local.server.port", Integer.class);
    }

    /** A production with the roll on a card and a drive. */
    Show show() {
        TestProduction production = get(Fixtures.class).production();
        UUID set = production.place("Set", false);
        UUID unit = production.unit("Main");
        UUID camera = production.camera(unit, "A");
        UUID day = production.day(unit, 1, "SHOOTING");
        UUID format = production.format("F");
        UUID card = production.item("CARD-1", "CARD", set, null);
        UUID drive = production.item("DRIVE-1", "DRIVE", set, null);
        Membership wrangler = production.as(Role.WRANGLER);
        UUID roll = get(Rolls.class).load(wrangler, ROLL, camera, day, card, format);
        get(Rolls.class).pull(wrangler, roll, BigDecimal.TEN);
        return new Show(production, wrangler, roll, drive);
    }

    record Show(TestProduction production, Membership wrangler, UUID roll, UUID drive) {}

    /** What the tables of evidence and all that belongs to them take on disk, once vacuumed. */
    long evidenceBytes() {
        get(JdbcTemplate.class).execute("vacuum");
        return jdbc().sql("""
                        select sum(pg_total_relation_size(c.oid)) from pg_class c
                        where c.relkind = 'r' and c.relname like 'verification%'
                        """).query(Long.class).single();
    }

    @Override
    public void close() {
        context.close();
    }
}
