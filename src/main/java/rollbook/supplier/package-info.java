/** Who sells and hires out media: suppliers, whom to ask there, what they offer at which price, and how punctual they are. */
@NullMarked
@ApplicationModule(allowedDependencies = {"quantity", "burndown", "ordering", "production", "audit", "web"})
package rollbook.supplier;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
