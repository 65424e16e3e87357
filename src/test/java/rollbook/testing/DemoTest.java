package rollbook.testing;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.webmvc.test.autoconfigure.AutoConfigureMockMvc;
import org.springframework.context.annotation.Import;
import org.springframework.test.context.ActiveProfiles;

/**
 * A test against the demo production in a database of its own. All such tests share one context, and change nothing that
 * another of them looks at.
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@SpringBootTest(
        properties = {"rollbook.jobs.enabled=false", "rollbook.test.database=demo", "spring.session.jdbc.cleanup-cron=-"
        })
@ActiveProfiles("demo")
@AutoConfigureMockMvc
@Import({Jobs.class, StatementCount.class})
public @interface DemoTest {}
