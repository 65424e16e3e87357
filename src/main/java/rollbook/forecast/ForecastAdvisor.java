package rollbook.forecast;

import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.ordering.OrderAdvice;
import rollbook.purchase.OrderAdvisor;

/** Orders begin with what the newest forecast advises. */
@Component
class ForecastAdvisor implements OrderAdvisor {
    private final ForecastRuns runs;
    private final Supplies supplies;

    ForecastAdvisor(ForecastRuns runs, Supplies supplies) {
        this.runs = runs;
        this.supplies = supplies;
    }

    @Override
    public Optional<Advice> forLeg(UUID productionId, UUID legId) {
        return supplies.find(productionId, legId).map(supply -> {
            OrderAdvice.Order order = order(productionId, legId);
            return new Advice(
                    supply.itemId(),
                    order == null ? null : Math.toIntExact(order.items()),
                    order == null ? null : order.likelyArrivalOn(),
                    supply.deliveredTo());
        });
    }

    private OrderAdvice.@Nullable Order order(UUID productionId, UUID legId) {
        return Optional.ofNullable(runs.standing(productionId).newest()).stream()
                .flatMap(run -> run.results().legs().stream())
                .filter(leg -> leg.legId().equals(legId))
                .findFirst()
                .map(LegForecast::order)
                .orElse(null);
    }
}
