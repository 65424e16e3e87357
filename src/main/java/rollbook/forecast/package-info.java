/** Says how long each leg's pool of media still lasts, and what has to be ordered by when. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "picture",
            "recording",
            "learning",
            "burndown",
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
package rollbook.forecast;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
