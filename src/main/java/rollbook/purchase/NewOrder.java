package rollbook.purchase;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.production.MediaKind;
import rollbook.supplier.DeliveredTo;

/**
 * An order as it is proposed.
 *
 * @param deliveryMinorUnits null for the supplier's usual price of a delivery
 * @param neededBy when it has to be there; null if nobody says
 * @param sourceName the leg or the scenario it comes from; empty if it is made by hand
 */
public record NewOrder(
        DeliveredTo deliveredTo,
        @Nullable Long deliveryMinorUnits,
        @Nullable LocalDate neededBy,
        String note,
        PurchaseOrder.Source source,
        String sourceName,
        List<Line> lines) {

    public NewOrder {
        if (lines.isEmpty()) {
            throw new IllegalArgumentException("An order of nothing");
        }
        lines = List.copyOf(lines);
    }

    /**
     * Items of one kind.
     *
     * @param id of a line that is kept and changed; null for a new one
     * @param itemId of a supplier's catalogue; null while nobody said which one it is
     * @param kind and {@code model}: what it is, for a line in no catalogue
     * @param hireWeeks null to buy
     * @param unitMinorUnits of one item, if hired for one week; null for the catalogue's price of today
     * @param legId whose pool they fill up; null for none
     */
    public record Line(
            @Nullable UUID id,
            @Nullable UUID itemId,
            @Nullable MediaKind kind,
            String model,
            int items,
            @Nullable Integer hireWeeks,
            @Nullable Long unitMinorUnits,
            @Nullable UUID legId) {

        public static Line ofCatalogue(
                UUID itemId,
                int items,
                @Nullable Integer hireWeeks,
                @Nullable Long unitMinorUnits,
                @Nullable UUID legId) {
            return new Line(null, itemId, null, "", items, hireWeeks, unitMinorUnits, legId);
        }

        public static Line inWords(
                MediaKind kind,
                String model,
                int items,
                @Nullable Integer hireWeeks,
                @Nullable Long unitMinorUnits,
                @Nullable UUID legId) {
            return new Line(null, null, kind, model, items, hireWeeks, unitMinorUnits, legId);
        }
    }
}
