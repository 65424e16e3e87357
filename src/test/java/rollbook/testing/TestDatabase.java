package rollbook.testing;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.Ordered;
import org.springframework.core.env.MapPropertySource;

/**
 * One PostgreSQL server for all tests of a run, or the one that {@code SPRING_DATASOURCE_URL} names. Tests share its
 * database: each makes productions of its own, and nothing crosses productions. A context that needs an empty database
 * names it with {@code rollbook.test.database}.
 */
class TestDatabase implements ApplicationContextInitializer<ConfigurableApplicationContext>, Ordered {
    private static final String SHARED = "rollbook";
    private static @Nullable EmbeddedPostgres server;

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        if (!context.getEnvironment().getProperty("spring.datasource.url", "").isBlank()
                || context.getEnvironment().containsProperty("rollbook.data")) {
            return;
        }
        String database = context.getEnvironment().getProperty("rollbook.test.database", SHARED);
        context.getEnvironment()
                .getPropertySources()
                .addFirst(new MapPropertySource(
                        "testDatabase",
                        Map.of("spring.datasource.url", url(database), "spring.datasource.username", "postgres")));
    }

    private static synchronized String url(String database) {
        try {
            if (server == null) {
                server = EmbeddedPostgres.builder()
                        .setLocaleConfig("locale", "C.UTF-8")
                        .setServerConfig("max_connections", "200")
                        .start();
            }
            try (Connection connection = server.getPostgresDatabase().getConnection();
                    Statement statement = connection.createStatement()) {
                boolean exists = statement
                        .executeQuery("select 1 from pg_database where datname = '" + database + "'")
                        .next();
                if (!exists) {
                    statement.execute("create database " + database);
                }
            }
            return "jdbc:postgresql://127.0.0.1:%d/%s".formatted(server.getPort(), database);
        } catch (IOException | SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public int getOrder() {
        return Ordered.HIGHEST_PRECEDENCE;
    }
}
