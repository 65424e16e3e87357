package rollbook.testing;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;

/**
 * A test against the whole portal and a real database, through {@code MockMvcTester}. All such tests share one context.
 * Background jobs run when a test says {@link Jobs#run()}, not before; nothing else touches the database meanwhile.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@SpringBootTest(properties = {"rollbook.jobs.enabled=false", "spring.session.jdbc.cleanup-cron=-"})
@AutoConfigureMockMvc
@Import({Fixtures.class, Jobs.class, StatementCount.class})
public @interface PortalTest {}
