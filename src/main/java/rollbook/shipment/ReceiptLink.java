package rollbook.shipment;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** An address at which a receiver without an account confirms what arrived, without its secret. */
record ReceiptLink(
        UUID id,
        UUID productionId,
        UUID shipmentId,
        Instant madeAt,
        String madeByName,
        Instant expiresAt,
        @Nullable Instant revokedAt,
        @Nullable Instant usedAt,
        @Nullable String usedByName) {

    boolean opens(Instant now) {
        return revokedAt == null && usedAt == null && now.isBefore(expiresAt);
    }

    public boolean isUsed() {
        return usedAt != null;
    }
}
