/** Reports to read, print and sign: of a shooting day, of the show at its handover, of storage for the producer. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "recording",
            "burndown",
            "manifest",
            "production",
            "inventory",
            "format",
            "schedule",
            "offload",
            "verification",
            "forecast",
            "label",
            "audit",
            "web"
        })
package rollbook.report;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
