/** The recording formats that a production shoots in, and what each makes of minutes and cards. */
@NullMarked
@ApplicationModule(allowedDependencies = {"quantity", "recording", "production", "inventory", "people", "audit", "web"})
package rollbook.format;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
