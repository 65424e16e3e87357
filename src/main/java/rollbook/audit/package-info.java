/** The record: who did what, when, to which item; written in the transaction that does it, and never changed. */
@NullMarked
@ApplicationModule(allowedDependencies = {"web"})
package rollbook.audit;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
