/** Exact amounts that every other module counts in: bytes, bytes per second, money and fractions. */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package rollbook.quantity;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
