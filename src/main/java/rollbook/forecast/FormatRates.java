package rollbook.forecast;

import java.util.Map;
import java.util.UUID;
import rollbook.quantity.DataRate;

/** How fast each recording format of a production fills a card. */
interface FormatRates {
    Map<UUID, DataRate> byFormat(UUID productionId);
}
