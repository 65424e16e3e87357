/** Proof: uploaded documents, what they say of each copy, the verdicts, and the clearing of cards on the strength of them. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "picture",
            "manifest",
            "production",
            "inventory",
            "format",
            "schedule",
            "offload",
            "people",
            "audit",
            "web"
        })
package rollbook.verification;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
