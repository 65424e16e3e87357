/** A production to look around in, invented in every part and played through the same services as anyone's. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "recording",
            "manifest",
            "production",
            "inventory",
            "format",
            "schedule",
            "offload",
            "verification",
            "shipment",
            "post",
            "ordering",
            "supplier",
            "purchase",
            "hire",
            "forecast",
            "cost",
            "scenario",
            "mail",
            "report",
            "people",
            "web"
        })
package rollbook.demo;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
