package rollbook.purchase;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import rollbook.supplier.Deliveries;
import rollbook.supplier.Delivery;

/** Tells suppliers' pages and lead times what was ordered from them and when it came. */
@Component
class OrderDeliveries implements Deliveries {
    private final OrderRows rows;

    OrderDeliveries(OrderRows rows) {
        this.rows = rows;
    }

    @Override
    public List<Delivery> of(UUID productionId) {
        return rows.list(productionId).stream()
                .flatMap(OrderDeliveries::delivery)
                .sorted(Comparator.comparing(Delivery::orderedOn))
                .toList();
    }

    /** Nothing of an order that was placed with nobody known, or of which nothing came or still may. */
    private static Stream<Delivery> delivery(PurchaseOrder order) {
        LocalDate orderedOn = order.orderedOn();
        int items = order.came() + order.left();
        return orderedOn == null || order.supplierId() == null || items == 0
                ? Stream.empty()
                : Stream.of(new Delivery(
                        order.id(),
                        order.supplierId(),
                        order.lines().stream().map(OrderLine::model).distinct().collect(Collectors.joining(", ")),
                        items,
                        order.came(),
                        orderedOn,
                        Objects.requireNonNull(order.expectedOn()),
                        order.left() == 0 ? order.lastCameOn() : null,
                        order.deliveredTo().furtherWorkingDays()));
    }
}
