package rollbook.forecast;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.PoolOutlook;
import rollbook.ordering.OrderAdvice;

/**
 * How one leg's pool fares.
 *
 * @param roomNowBytes stands here too so that earlier forecasts, of whatever method, tell it in the same place
 * @param advice null if nobody has said how more can be had
 */
record LegForecast(
        UUID legId,
        String legName,
        long roomNowBytes,
        PoolOutlook outlook,
        @Nullable OrderAdvice advice) {}
