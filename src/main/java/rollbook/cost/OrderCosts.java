package rollbook.cost;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.purchase.ItemsAtCost.ItemAtCost;
import rollbook.purchase.OrderLine;
import rollbook.purchase.PurchaseOrder;

/**
 * What orders cost. What isn't placed costs nothing yet. Items that were hired and are registered are left out once they
 * have come: their hire counts them week by week.
 *
 * @param unpriced items that were ordered for nobody knows how much
 * @param onlyCounted how many bought items of a model came and weren't registered with their receipt
 */
record OrderCosts(List<CostLine> lines, int unpriced, Map<Model, Integer> onlyCounted) {

    /** @param words how an order of this number is called */
    static OrderCosts of(List<PurchaseOrder> orders, List<ItemAtCost> items, Function<Integer, String> words) {
        Map<UUID, Long> registered = items.stream()
                .filter(item -> item.lineId() != null)
                .collect(Collectors.groupingBy(ItemAtCost::lineId, Collectors.counting()));
        List<CostLine> costs = new ArrayList<>();
        int unpriced = 0;
        Map<Model, Integer> onlyCounted = new HashMap<>();
        for (PurchaseOrder order : orders) {
            if (order.orderedOn() == null || order.state() == PurchaseOrder.State.CANCELLED) {
                continue;
            }
            OfOrder of = new OfOrder(order, words.apply(order.number()));
            for (OrderLine line : order.lines()) {
                int came = line.came();
                int known = registered.getOrDefault(line.id(), 0L).intValue();
                int counted = line.isHired() ? came - known : came;
                int awaited = order.isAwaited() ? line.left() : 0;
                of.add(costs, Stage.SPENT, line, counted, line.lastCameOn());
                of.add(costs, Stage.COMMITTED, line, awaited, order.expectedOn());
                unpriced += line.unitMinorUnits() == null ? counted + awaited : 0;
                if (!line.isHired() && came > known) {
                    onlyCounted.merge(new Model(line.kind(), line.model()), came - known, Integer::sum);
                }
            }
            of.addDelivery(costs);
        }
        return new OrderCosts(costs, unpriced, onlyCounted);
    }

    private record OfOrder(PurchaseOrder order, String words) {
        void add(List<CostLine> costs, Stage stage, OrderLine line, int items, @Nullable LocalDate on) {
            Long cost = line.costMinorUnits(items);
            if (items > 0 && cost != null) {
                costs.add(new CostLine(
                        stage, CostKind.of(line.kind()), line.isHired(), cost, line.model(), words, path(), on));
            }
        }

        /** Owed with the first item that comes. */
        void addDelivery(List<CostLine> costs) {
            boolean came = order.came() > 0;
            if (order.deliveryMinorUnits() > 0) {
                costs.add(new CostLine(
                        came ? Stage.SPENT : Stage.COMMITTED,
                        CostKind.DELIVERY,
                        false,
                        order.deliveryMinorUnits(),
                        order.supplierName(),
                        words,
                        path(),
                        came ? order.lastCameOn() : order.expectedOn()));
            }
        }

        private String path() {
            return "orders/" + order.id();
        }
    }
}
