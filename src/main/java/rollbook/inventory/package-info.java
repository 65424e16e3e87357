/** The production's media items: what is owned or hired, where each is and who holds it, and what state each card is in. */
@NullMarked
@ApplicationModule(allowedDependencies = {"quantity", "picture", "production", "people", "audit", "web"})
package rollbook.inventory;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
