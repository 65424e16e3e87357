package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.learning.Learned;
import rollbook.ordering.PurchasePlan;

/**
 * A forecast of all legs.
 *
 * @param methodId names the method and its version; its description is the message {@code forecast.method.<methodId>}
 * @param learned what the wrapped days had taught
 * @param recording how much the show will record
 * @param plan the cheapest orders for all pools together; null if none is needed or the offers are too few
 */
record StorageForecast(
        String methodId,
        LocalDate today,
        LocalDate endOfShow,
        Learned learned,
        RecordingOutlook recording,
        List<LegForecast> legs,
        @Nullable PurchasePlan plan) {
    StorageForecast {
        legs = List.copyOf(legs);
    }
}
