package rollbook.burndown;

import rollbook.quantity.Share;

/**
 * Bytes written for bytes recorded.
 *
 * @param usual {@link Share#WHOLE} as recorded, below it if encoded
 */
public record Kept(Share usual) {}
