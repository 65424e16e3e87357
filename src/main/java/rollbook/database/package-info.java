/** The database under everything: the embedded PostgreSQL server when none is configured, and the background jobs' scheduler. */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package rollbook.database;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
