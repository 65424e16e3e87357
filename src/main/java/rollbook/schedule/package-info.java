/** The shooting schedule: the numbered days of each unit, and the minutes planned for each camera and format. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "picture",
            "recording",
            "production",
            "inventory",
            "format",
            "people",
            "audit",
            "web"
        })
package rollbook.schedule;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
