/** What pictures have in common: axes, places, words. Pure: figures in, coordinates out; each module draws its own. */
@NullMarked
@ApplicationModule(allowedDependencies = "quantity")
package rollbook.picture;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
