package rollbook.supplier;

import java.util.UUID;

/** A supplier, what it offers or a price has changed. Heard in the same transaction. */
public record SupplierChanged(UUID productionId) {}
