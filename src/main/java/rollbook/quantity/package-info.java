/** Exact amounts that every other module counts in: bytes, bytes per second and the fractions between them. */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package rollbook.quantity;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
