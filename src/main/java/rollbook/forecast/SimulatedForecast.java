package rollbook.forecast;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.PoolOutlook;
import rollbook.burndown.PoolPaths;
import rollbook.burndown.Show;
import rollbook.burndown.SimulatedShow;
import rollbook.burndown.Simulation;
import rollbook.learning.Learned;
import rollbook.learning.Learning;
import rollbook.ordering.Offer;
import rollbook.ordering.Ordering;
import rollbook.ordering.PurchasePlan;

/** The forecast that learns from the wrapped days, plays the rest of the show many times, and says what to order. */
final class SimulatedForecast {
    static final String METHOD_ID = "simulated-2";

    private SimulatedForecast() {}

    static StorageForecast of(ForecastInput input) {
        Learned learned = Learning.from(input.shotDays(), input.habits());
        Show show = input.show();
        SimulatedShow simulated =
                Simulation.run(show, input.pools(), learned, input.fillLevel(), input.seed(), input.replicates());
        Map<UUID, PoolPaths> paths =
                simulated.paths().stream().collect(Collectors.toMap(PoolPaths::poolId, Function.identity()));
        List<LegForecast> legs = simulated.outlook().pools().stream()
                .map(pool -> leg(pool, paths.get(pool.poolId()), input))
                .toList();
        PurchasePlan plan = plan(legs, simulated.paths(), input, UnaryOperator.identity());
        return new StorageForecast(
                METHOD_ID,
                input.today(),
                input.endOfShow(),
                learned,
                RecordingOutlook.of(show, learned, input.seed(), input.replicates()),
                legs,
                plan,
                costWithoutHire(plan, legs, simulated.paths(), input));
    }

    private static LegForecast leg(PoolOutlook pool, PoolPaths paths, ForecastInput input) {
        return LegForecast.of(
                pool,
                offer(paths, input)
                        .map(offer -> Ordering.advise(paths, offer, input.serviceLevel(), input.asOf()))
                        .orElse(null),
                input.serviceLevel());
    }

    /** None that doesn't hold a roll: where rolls stay whole it is of no use, however many there are. */
    private static Optional<Offer> offer(PoolPaths paths, ForecastInput input) {
        return input.offerFor(paths.poolId()).filter(offer -> paths.usableBytesOfItem(offer.itemCapacityBytes()) > 0);
    }

    private static @Nullable PurchasePlan plan(
            List<LegForecast> legs, List<PoolPaths> paths, ForecastInput input, UnaryOperator<Offer> as) {
        if (legs.stream().allMatch(leg -> leg.order() == null)) {
            return null;
        }
        List<PurchasePlan.Wanted> wanted = paths.stream()
                .flatMap(pool -> offer(pool, input)
                        .map(as)
                        .map(offer -> new PurchasePlan.Wanted(pool, offer.hire() != null, List.of(offer)))
                        .stream())
                .toList();
        return PurchasePlan.of(wanted, input.serviceLevel(), input.asOf(), input.endOfShow(), input.seed());
    }

    /** Null if nothing is hired, or not everything can be bought. */
    private static @Nullable Long costWithoutHire(
            @Nullable PurchasePlan plan, List<LegForecast> legs, List<PoolPaths> paths, ForecastInput input) {
        if (plan == null || plan.lines().stream().noneMatch(PurchasePlan.Line::hired)) {
            return null;
        }
        PurchasePlan bought = plan(legs, paths, input, Offer::forSaleOnly);
        return bought == null ? null : bought.costMinorUnits();
    }
}
