package rollbook.forecast;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.PoolOutlook;
import rollbook.ordering.OrderAdvice;
import rollbook.ordering.ServiceLevel;

/**
 * How one leg's pool fares.
 *
 * @param roomNowBytes stands here too so that earlier forecasts, of whatever method, tell it in the same place
 * @param need whether it needs an order
 * @param advice null if nobody has said how more can be had
 */
record LegForecast(
        UUID legId,
        String legName,
        long roomNowBytes,
        OrderFlag need,
        PoolOutlook outlook,
        @Nullable OrderAdvice advice) {

    static LegForecast of(PoolOutlook outlook, @Nullable OrderAdvice advice, ServiceLevel level) {
        return new LegForecast(
                outlook.poolId(),
                outlook.poolName(),
                outlook.roomNowBytes(),
                need(outlook, advice, level),
                outlook,
                advice);
    }

    private static OrderFlag need(PoolOutlook outlook, @Nullable OrderAdvice advice, ServiceLevel level) {
        if (advice == null) {
            return outlook.chanceOfRunningOut() > level.allowedRisk() ? OrderFlag.NO_SUPPLY : OrderFlag.NONE;
        }
        OrderAdvice.Order order = advice.order();
        if (order == null) {
            return outlook.chanceOfRunningOut() > level.allowedRisk() ? OrderFlag.NO_HELP : OrderFlag.NONE;
        }
        return order.late() ? OrderFlag.LATE : OrderFlag.ORDER_BY;
    }

    /** Null without an order. */
    OrderAdvice.@Nullable Order order() {
        return advice == null ? null : advice.order();
    }

    boolean hasMedia() {
        return outlook.capacityNowBytes() > 0;
    }
}
