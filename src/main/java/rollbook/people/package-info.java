/** People, their accounts, and signing in. */
@NullMarked
@ApplicationModule(allowedDependencies = {"audit", "web"})
package rollbook.people;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
