package rollbook.turnaround;

import org.jspecify.annotations.Nullable;
import rollbook.quantity.DataRate;

/**
 * A way of a kind of card into a reader.
 *
 * @param adapter if one is needed. Ways that name the same adapter share one thing: one reader has it at a time
 * @param rate the most that card, adapter and reader pass together
 */
public record Way(String cardType, @Nullable String adapter, DataRate rate) {
    public Way {
        Invalid.ifBlank(cardType, "cardType");
        Invalid.unless(!rate.isZero(), "rate", "must be above zero");
    }
}
