/** Plays a shooting day through before it is shot: scenarios of its cards and readers, kept, compared and ordered from. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "recording",
            "turnaround",
            "ordering",
            "supplier",
            "purchase",
            "production",
            "inventory",
            "format",
            "schedule",
            "offload",
            "audit",
            "web"
        })
package rollbook.scenario;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
