/** Hired items: what was agreed with whom, what it costs, when they are due back, and their way back. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "production",
            "inventory",
            "supplier",
            "verification",
            "label",
            "ordering",
            "people",
            "audit",
            "web"
        })
package rollbook.hire;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
