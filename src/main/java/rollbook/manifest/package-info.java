/** Reads and writes checksum manifests, splits them over rolls, and says what they prove of a copy; pure computation. */
@NullMarked
@ApplicationModule(allowedDependencies = {})
package rollbook.manifest;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
