package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import rollbook.learning.Learned;

/**
 * A forecast of all legs.
 *
 * @param methodId names the method and its version; its description is the message {@code forecast.method.<methodId>}
 * @param learned what the wrapped days had taught
 * @param recording how much the show will record
 */
record StorageForecast(
        String methodId,
        LocalDate today,
        LocalDate endOfShow,
        Learned learned,
        RecordingOutlook recording,
        List<LegForecast> legs) {
    StorageForecast {
        legs = List.copyOf(legs);
    }
}
