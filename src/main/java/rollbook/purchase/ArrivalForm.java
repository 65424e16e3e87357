package rollbook.purchase;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;

/** How many items of each line came, as a person counts them. */
record ArrivalForm(
        @Valid List<Count> came, @NotNull @Nullable LocalDate cameOn, int version) {

    /** Of a line. */
    record Count(UUID line, @Min(0) @Max(10_000) @Nullable Integer items) {}

    ArrivalForm {
        came = came == null ? List.of() : came.stream().filter(Objects::nonNull).toList();
    }

    static ArrivalForm allOf(PurchaseOrder order, LocalDate today) {
        return new ArrivalForm(
                order.lines().stream()
                        .map(line -> new Count(line.id(), line.left()))
                        .toList(),
                today,
                order.version());
    }

    /** Looks for what a single field doesn't tell; only in a form without errors. */
    void look(PurchaseOrder order, LocalDate today, BindingResult result) {
        int all = 0;
        for (int i = 0; i < came.size(); i++) {
            OrderLine line = order.line(came.get(i).line());
            int items = Objects.requireNonNullElse(came.get(i).items(), 0);
            all += items;
            if (line == null || items > line.left()) {
                result.rejectValue(
                        "came[" + i + "].items",
                        "purchase.arrival.too-many",
                        new Object[] {line == null ? 0 : line.left()},
                        null);
            }
        }
        if (all == 0 && !came.isEmpty()) {
            result.rejectValue("came[0].items", "purchase.arrival.nothing");
        }
        LocalDate on = Objects.requireNonNull(cameOn);
        if (on.isAfter(today)) {
            result.rejectValue("cameOn", "purchase.arrival.later");
        } else if (order.orderedOn() != null && on.isBefore(order.orderedOn())) {
            result.rejectValue("cameOn", "purchase.arrival.before");
        }
    }

    /** Only of a form without errors. */
    Map<UUID, Integer> itemsByLine() {
        Map<UUID, Integer> items = new LinkedHashMap<>();
        came.stream()
                .filter(count -> count.items() != null && count.items() > 0)
                .forEach(count -> items.put(count.line(), count.items()));
        return items;
    }
}
