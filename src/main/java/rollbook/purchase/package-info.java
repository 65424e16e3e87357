/** What is ordered from suppliers: proposed, approved, placed, expected, come, closed, with each step on record. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {
            "quantity",
            "burndown",
            "ordering",
            "supplier",
            "production",
            "inventory",
            "label",
            "audit",
            "web"
        })
package rollbook.purchase;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
