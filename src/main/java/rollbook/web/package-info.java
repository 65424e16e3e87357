/** What every page shares: layout, fragments, refusals, error pages, and how figures and times are written. */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package rollbook.web;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
