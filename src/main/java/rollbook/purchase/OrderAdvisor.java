package rollbook.purchase;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.supplier.DeliveredTo;

/** Says what to order for a leg's pool; whoever forecasts implements it. */
public interface OrderAdvisor {
    /** Empty if nobody said what the leg is supplied with. */
    Optional<Advice> forLeg(UUID productionId, UUID legId);

    /**
     * What to order for a leg's pool.
     *
     * @param itemId of a supplier's catalogue
     * @param items null if none is needed
     * @param neededBy null if none is needed
     */
    record Advice(
            UUID itemId, @Nullable Integer items, @Nullable LocalDate neededBy, DeliveredTo deliveredTo) {}
}
