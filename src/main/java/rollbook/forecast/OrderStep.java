package rollbook.forecast;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What was recorded of an order: that items came, or that what hadn't come was called off.
 *
 * @param cameOn null if it was called off, or if only the moment of recording is known
 */
record OrderStep(
        int number, String step, int items, @Nullable LocalDate cameOn, Instant at, String byName) {}
