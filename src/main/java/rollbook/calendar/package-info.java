/** What is due when, for people's own calendars: a feed for each person and production, at a secret address. */
@NullMarked
@ApplicationModule(
        allowedDependencies = {"production", "inventory", "verification", "purchase", "forecast", "audit", "web"})
package rollbook.calendar;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
