package rollbook.purchase;

import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.PositiveOrZero;
import java.math.BigDecimal;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Money;

/**
 * A line of an order as a person writes it.
 *
 * @param id of a line that is kept
 * @param weeks of hire; empty to buy
 * @param price of an item, if hired for a week; empty for the catalogue's
 * @param remove whether the line is taken out; null where it can't be
 */
record LineForm(
        @Nullable UUID id,
        @Nullable UUID item,
        @Min(1) @Max(10_000) @Nullable Integer items,
        @Min(1) @Max(250) @Nullable Integer weeks,

        @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal price,

        @Nullable UUID leg,
        @Nullable Boolean remove) {

    static LineForm blank() {
        return new LineForm(null, null, null, null, null, null, false);
    }

    static LineForm of(OrderLine line, Money money) {
        return new LineForm(
                line.id(),
                line.catalogueItemId(),
                line.items(),
                line.hireWeeks(),
                line.unitMinorUnits() == null ? null : money.amount(line.unitMinorUnits()),
                line.legId(),
                false);
    }

    /** Whether nothing is ordered by it: it was left blank or taken out. */
    boolean isNothing() {
        return Boolean.TRUE.equals(remove)
                || id == null && item == null && items == null && weeks == null && price == null;
    }

    /** @param kept the line that it changes; only of a form without errors */
    NewOrder.Line line(@Nullable OrderLine kept, Money money) {
        boolean inWords = item == null;
        return new NewOrder.Line(
                id,
                item,
                inWords && kept != null ? kept.kind() : null,
                inWords && kept != null ? kept.model() : "",
                items == null ? 0 : items,
                weeks,
                price == null ? null : money.toMinorUnits(price),
                leg);
    }
}
