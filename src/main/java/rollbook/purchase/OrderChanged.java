package rollbook.purchase;

import java.util.UUID;

/** Something happened to an order of a production: a step, or a receipt. */
public record OrderChanged(UUID productionId) {}
