/**
 * Says what to order by when, so that a pool of media runs out with no more than the chance the production allows. Pure:
 * paths and offers in, advice out.
 */
@NullMarked
@ApplicationModule(allowedDependencies = {"quantity", "learning", "burndown"})
package rollbook.ordering;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
