/** A production: one show with its people's roles, units, cameras, places, copy plan and clearing policy. */
@NullMarked
@ApplicationModule(allowedDependencies = {"people", "audit", "web"})
package rollbook.production;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
