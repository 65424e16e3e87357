/** Rolls, the sessions that offload them, and the copies that those make. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "recording",
            "turnaround",
            "production",
            "inventory",
            "format",
            "schedule",
            "people",
            "audit",
            "web"
        })
package rollbook.offload;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
