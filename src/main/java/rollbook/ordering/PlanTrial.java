package rollbook.ordering;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.burndown.PoolPaths;
import rollbook.learning.Streams;
import rollbook.ordering.PossibleOrder.Delivery;

/** Tries a purchase plan on the courses of the show, with lead times drawn, and says how often a pool runs out. */
final class PlanTrial {
    private final List<PossibleOrder> orders;
    private final Streams streams;

    PlanTrial(List<PossibleOrder> orders, long seed) {
        this.orders = orders;
        this.streams = new Streams(seed);
    }

    /** @param packs of each order */
    PurchasePlan.PoolRisk risk(int pool, PoolPaths paths, long[] packs) {
        List<LocalDate[]> usefulFrom = orders.stream()
                .map(order -> drawn(order.delivery(), paths.replicates()))
                .toList();
        int ranOut = 0;
        int unavoidable = 0;
        for (int replicate = 0; replicate < paths.replicates(); replicate++) {
            LocalDate earliest = earliest(pool, usefulFrom, replicate);
            LocalDate runOut = runOut(pool, paths, packs, usefulFrom, replicate);
            if (runOut != null) {
                ranOut++;
                unavoidable += earliest == null || runOut.isBefore(earliest) ? 1 : 0;
            }
        }
        return new PurchasePlan.PoolRisk(
                paths.poolId(), (double) ranOut / paths.replicates(), (double) unavoidable / paths.replicates());
    }

    /** By replicate: what comes in one delivery comes on one day, for every pool and in every plan. */
    private LocalDate[] drawn(Delivery delivery, int replicates) {
        double[] chances =
                streams.uniforms(replicates, "plan", delivery.supplier().name(), delivery.orderOn());
        LocalDate[] dates = new LocalDate[replicates];
        for (int replicate = 0; replicate < replicates; replicate++) {
            dates[replicate] = delivery.usefulFrom(chances[replicate]);
        }
        return dates;
    }

    private @Nullable LocalDate earliest(int pool, List<LocalDate[]> usefulFrom, int replicate) {
        LocalDate earliest = null;
        for (int i = 0; i < orders.size(); i++) {
            LocalDate date = usefulFrom.get(i)[replicate];
            if (orders.get(i).pool() == pool && (earliest == null || date.isBefore(earliest))) {
                earliest = date;
            }
        }
        return earliest;
    }

    private @Nullable LocalDate runOut(
            int pool, PoolPaths paths, long[] packs, List<LocalDate[]> usefulFrom, int replicate) {
        for (int date = 0; date < paths.dates().size(); date++) {
            LocalDate day = paths.dates().get(date);
            long lacking = paths.shortfallBytes(date, replicate);
            for (int i = 0; i < packs.length && lacking > 0; i++) {
                if (orders.get(i).pool() == pool && !usefulFrom.get(i)[replicate].isAfter(day)) {
                    lacking -= Math.multiplyExact(packs[i], orders.get(i).packBytes());
                }
            }
            if (lacking > 0) {
                return day;
            }
        }
        return null;
    }
}
