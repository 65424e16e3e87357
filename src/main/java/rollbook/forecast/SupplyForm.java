package rollbook.forecast;

import jakarta.validation.constraints.NotNull;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.supplier.DeliveredTo;

/** What a leg's pool is filled up with, as a person chooses it. */
record SupplyForm(
        @NotNull @Nullable UUID item, @NotNull @Nullable DeliveredTo deliveredTo, int version) {

    static SupplyForm of(LegSupply supply) {
        return new SupplyForm(supply.itemId(), supply.deliveredTo(), supply.version());
    }

    static SupplyForm blank() {
        return new SupplyForm(null, DeliveredTo.OFFICE, LegSupply.NOT_KEPT);
    }

    /** Only of a form without errors. */
    LegSupply supply(UUID legId) {
        return new LegSupply(legId, Objects.requireNonNull(item), Objects.requireNonNull(deliveredTo), version);
    }
}
