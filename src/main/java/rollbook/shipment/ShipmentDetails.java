package rollbook.shipment;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** What somebody says of a shipment; for the fields see {@link Shipment}. */
public record ShipmentDetails(
        UUID fromPlaceId,
        UUID toPlaceId,
        String receiver,
        String carrier,
        String seals,
        @Nullable Long weightGrams,
        String note,
        @Nullable Instant expectedBy) {}
