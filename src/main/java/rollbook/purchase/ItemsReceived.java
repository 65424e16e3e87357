package rollbook.purchase;

import java.util.UUID;

/** Items of an order came and were entered in the book. Heard in the same transaction. */
public record ItemsReceived(UUID productionId, UUID orderId, UUID receiptId) {}
