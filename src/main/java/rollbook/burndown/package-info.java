/** Plays the rest of a show many times over and says how long each pool of media lasts, with which chance. */
@NullMarked
@ApplicationModule(allowedDependencies = {"quantity", "learning"})
package rollbook.burndown;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
