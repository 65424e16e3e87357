package rollbook.purchase;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Digits;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.PositiveOrZero;
import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Money;
import rollbook.supplier.DeliveredTo;

/**
 * An order as a person writes it.
 *
 * @param deliveryPrice empty for the supplier's usual one
 * @param flag the leg whose flag it is about; null if it is made by hand
 * @param version of the order that the person has seen
 */
record OrderForm(
        @Valid List<LineForm> lines,
        @NotNull @Nullable DeliveredTo deliveredTo,

        @PositiveOrZero @Digits(integer = 9, fraction = 3) @Nullable
        BigDecimal deliveryPrice,

        @Nullable LocalDate neededBy,
        @Size(max = 1000) String note,
        @Nullable UUID flag,
        int version) {

    OrderForm {
        lines = lines == null
                ? List.of()
                : lines.stream()
                        .map(line -> line == null ? LineForm.blank() : line)
                        .toList();
        note = note == null ? "" : note.strip();
    }

    static OrderForm of(LineForm line, OrderAdvisor.@Nullable Advice advice, @Nullable UUID flag) {
        return new OrderForm(
                List.of(line),
                advice == null ? DeliveredTo.OFFICE : advice.deliveredTo(),
                null,
                advice == null ? null : advice.neededBy(),
                "",
                flag,
                0);
    }

    static OrderForm of(PurchaseOrder order, Money money) {
        return new OrderForm(
                order.lines().stream().map(line -> LineForm.of(line, money)).toList(),
                order.deliveredTo(),
                order.supplierId() == null ? null : money.amount(order.deliveryMinorUnits()),
                order.neededBy(),
                order.note(),
                null,
                order.version());
    }

    /** With one more line to fill in. */
    OrderForm longer() {
        List<LineForm> longer = new ArrayList<>(lines);
        longer.add(LineForm.blank());
        return new OrderForm(
                Collections.unmodifiableList(longer), deliveredTo, deliveryPrice, neededBy, note, flag, version);
    }

    /**
     * Only of a form without errors.
     *
     * @param kept the order that is changed; null for a new one
     * @param flagName the leg whose flag it is about; empty for none
     */
    NewOrder order(@Nullable PurchaseOrder kept, String flagName, Money money) {
        return new NewOrder(
                Objects.requireNonNull(deliveredTo),
                deliveryPrice == null ? null : money.toMinorUnits(deliveryPrice),
                neededBy,
                note,
                flag == null ? PurchaseOrder.Source.HAND : PurchaseOrder.Source.FLAG,
                flagName,
                lines.stream()
                        .filter(line -> !line.isNothing())
                        .map(line -> line.line(kept == null ? null : kept.line(line.id()), money))
                        .toList());
    }
}
