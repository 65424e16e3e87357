/** Labels of media items: what stands on them, on which sheets, as a page to look at and as a PDF to print. */
@NullMarked
@ApplicationModule(allowedDependencies = {"production", "inventory", "web"})
package rollbook.label;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
