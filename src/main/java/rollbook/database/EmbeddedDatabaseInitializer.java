package rollbook.database;

import java.nio.file.Path;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.SpringApplication;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.Ordered;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.MapPropertySource;

/**
 * Starts the embedded PostgreSQL server when no {@code spring.datasource.url} is set, so that a newcomer needs nothing.
 * Its data live in the folder named by {@code rollbook.data} (default {@code ./rollbook-data}).
 */
class EmbeddedDatabaseInitializer implements ApplicationContextInitializer<ConfigurableApplicationContext>, Ordered {
    private static final Logger log = LoggerFactory.getLogger(EmbeddedDatabaseInitializer.class);

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        ConfigurableEnvironment environment = context.getEnvironment();
        String url = environment.getProperty("spring.datasource.url", "");
        if (!url.isBlank()) {
            return;
        }
        Path folder = Path.of(environment.getProperty("rollbook.data", "rollbook-data"))
                .toAbsolutePath()
                .normalize();
        EmbeddedDatabase database = EmbeddedDatabase.start(folder);
        // After every context is closed, so that no bean loses its connection while it shuts down.
        SpringApplication.getShutdownHandlers().add(database::close);
        log.info("Embedded PostgreSQL keeps its data in {}", folder);
        environment
                .getPropertySources()
                .addFirst(new MapPropertySource(
                        "embeddedDatabase",
                        Map.of(
                                "spring.datasource.url", database.jdbcUrl(),
                                "spring.datasource.username", EmbeddedDatabase.OWNER,
                                "spring.datasource.password", database.ownerPassword())));
    }

    @Override
    public int getOrder() {
        return Ordered.LOWEST_PRECEDENCE;
    }
}
