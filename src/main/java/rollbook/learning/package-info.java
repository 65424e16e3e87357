/** What the wrapped days teach about the days to come: bytes recorded for bytes planned, how sure that is, and draws. */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package rollbook.learning;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
