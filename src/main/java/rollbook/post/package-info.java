/** Post: what set says was sent there against what has come and is proven there, which media may go back, the sets of tapes. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "manifest",
            "production",
            "inventory",
            "offload",
            "verification",
            "shipment",
            "label",
            "audit",
            "web"
        })
package rollbook.post;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
