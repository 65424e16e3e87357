/** Shipments and hand-overs: what is on its way from whom to whom, who confirmed that it came, and what is lost with it. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "manifest",
            "production",
            "inventory",
            "label",
            "offload",
            "verification",
            "audit",
            "web"
        })
package rollbook.shipment;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
