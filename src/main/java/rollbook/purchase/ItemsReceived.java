package rollbook.purchase;

import java.util.UUID;

/** Items of an order came, or it was taken back that they did. Heard in the same transaction. */
public record ItemsReceived(UUID productionId, UUID orderId, UUID receiptId) {}
