/** What media cost a show: spent, committed and still to come, against its budget. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "ordering",
            "production",
            "inventory",
            "supplier",
            "purchase",
            "hire",
            "forecast",
            "audit",
            "web"
        })
package rollbook.cost;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
