package rollbook.burndown;

import org.jspecify.annotations.Nullable;
import rollbook.learning.Belief;
import rollbook.quantity.Share;

/**
 * Bytes written for bytes recorded.
 *
 * @param usual {@link Share#WHOLE} as recorded, below it if encoded
 * @param belief what is known of the logarithm of the share over many rolls; null if {@code usual} is exact
 */
public record Kept(Share usual, @Nullable Belief belief) {
    public static final Kept WHOLE = new Kept(Share.WHOLE, null);
}
