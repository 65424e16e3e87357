package rollbook.ordering;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.PoolPaths;

/**
 * What would be ordered now for all pools together at least cost, if everything to the end of the show had to be ordered
 * with what is known today. It says which of several offers is the cheapest and whether to buy or to hire; how much of it
 * to order at once, an {@link OrderAdvice} says.
 *
 * @param lines by supplier, then by order day, then in the order of the pools and their offers
 * @param costMinorUnits items, rates and deliveries
 * @param risks by pool, in the order in which they were given
 */
public record PurchasePlan(List<Line> lines, long costMinorUnits, List<PoolRisk> risks) {
    /**
     * Packs of an offer.
     *
     * @param hired until the end of the show; else bought
     * @param costMinorUnits without the delivery
     */
    public record Line(Offer offer, LocalDate orderOn, boolean hired, long packs, long costMinorUnits) {}

    /**
     * The chance that a pool runs out with the plan.
     *
     * @param unavoidable of it, before the earliest order could come
     */
    public record PoolRisk(UUID poolId, double risk, double unavoidable) {}

    /**
     * A pool and what can be had for it.
     *
     * @param comesBack whether its media are emptied again; only then they can be hired
     */
    public record Wanted(PoolPaths paths, boolean comesBack, List<Offer> offers) {
        public Wanted {
            offers = List.copyOf(offers);
        }
    }

    public PurchasePlan {
        lines = List.copyOf(lines);
        risks = List.copyOf(risks);
    }

    /**
     * @param seed for the lead times that are drawn to check the plan
     * @return null if the offers are too few for it
     */
    public static @Nullable PurchasePlan of(
            List<Wanted> wanted, ServiceLevel level, Instant now, LocalDate endOfShow, long seed) {
        return new PurchasePlanning(wanted, level, now, endOfShow, seed).plan();
    }
}
