/** Pages that look across modules: today, the record, and finding a thing by its code. Nothing depends on it. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "manifest",
            "production",
            "inventory",
            "format",
            "schedule",
            "offload",
            "verification",
            "forecast",
            "people",
            "audit",
            "web"
        })
package rollbook.reporting;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
