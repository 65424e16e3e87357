/** One shooting day played by events: how long cameras wait for cards, and when the last card is proven. */
@NullMarked
@ApplicationModule(allowedDependencies = {"quantity", "learning"})
package rollbook.turnaround;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
