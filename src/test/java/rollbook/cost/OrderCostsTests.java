package rollbook.cost;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.inventory.Ownership;
import rollbook.production.MediaKind;
import rollbook.purchase.ItemsAtCost.ItemAtCost;
import rollbook.purchase.OrderLine;
import rollbook.purchase.OrderStep;
import rollbook.purchase.PurchaseOrder;
import rollbook.supplier.DeliveredTo;

/** Worked by hand, in cents: drives at 180.00, readers hired at 40.00 a week, a delivery for 15.00. */
class OrderCostsTests {
    private static final LocalDate ORDERED = LocalDate.of(2026, 3, 2);
    private static final LocalDate EXPECTED = LocalDate.of(2026, 3, 6);
    private static final LocalDate CAME = LocalDate.of(2026, 3, 5);

    @Test
    void whatIsOnlyProposedOrApprovedCostsNothing() {
        assertThat(costs(order(List.of(drives(6, 0, 0)), OrderStep.Kind.PROPOSED))
                        .lines())
                .isEmpty();
        assertThat(costs(order(List.of(drives(6, 0, 0)), OrderStep.Kind.PROPOSED, OrderStep.Kind.APPROVED))
                        .lines())
                .isEmpty();
    }

    @Test
    void whatIsPlacedIsCommittedUntilItComesAndSoIsItsDelivery() {
        assertThat(costs(placed(drives(6, 0, 0))).lines())
                .containsExactly(
                        line(Stage.COMMITTED, CostKind.DRIVE, false, 6 * 18_000, EXPECTED),
                        line(Stage.COMMITTED, CostKind.DELIVERY, false, 1_500, EXPECTED));
    }

    @Test
    void whatCameIsSpentWithTheDeliveryAndTheRestStaysCommitted() {
        assertThat(costs(placed(drives(6, 4, 0))).lines())
                .containsExactly(
                        line(Stage.SPENT, CostKind.DRIVE, false, 4 * 18_000, CAME),
                        line(Stage.COMMITTED, CostKind.DRIVE, false, 2 * 18_000, EXPECTED),
                        line(Stage.SPENT, CostKind.DELIVERY, false, 1_500, CAME));
    }

    @Test
    void whatTheSupplierCreditsIsOwedByNobody() {
        assertThat(costs(placed(drives(6, 4, 1))).lines())
                .contains(line(Stage.COMMITTED, CostKind.DRIVE, false, 18_000, EXPECTED));
        assertThat(costs(placed(drives(6, 4, 2))).lines())
                .containsExactly(
                        line(Stage.SPENT, CostKind.DRIVE, false, 4 * 18_000, CAME),
                        line(Stage.SPENT, CostKind.DELIVERY, false, 1_500, CAME));
    }

    @Test
    void whatIsCalledOffCostsWhatHadComeOrNothing() {
        OrderStep.Kind[] calledOff = {OrderStep.Kind.PROPOSED, OrderStep.Kind.PLACED, OrderStep.Kind.CANCELLED};
        assertThat(costs(order(List.of(drives(6, 0, 0)), calledOff)).lines()).isEmpty();
        assertThat(costs(order(List.of(drives(6, 4, 0)), calledOff)).lines())
                .containsExactly(
                        line(Stage.SPENT, CostKind.DRIVE, false, 4 * 18_000, CAME),
                        line(Stage.SPENT, CostKind.DELIVERY, false, 1_500, CAME));
    }

    @Test
    void aHireThatIsRegisteredIsCountedByItsAgreementAndNotByItsOrder() {
        OrderLine readers = readers(3, 2);
        List<ItemAtCost> one = List.of(item(readers));
        // Three for five weeks: one still to come, one counted in, and one registered.
        assertThat(OrderCosts.of(List.of(placed(readers)), one, OrderCostsTests::words)
                        .lines())
                .containsExactly(
                        line(Stage.SPENT, CostKind.READER, true, 5 * 4_000, CAME),
                        line(Stage.COMMITTED, CostKind.READER, true, 5 * 4_000, EXPECTED),
                        line(Stage.SPENT, CostKind.DELIVERY, false, 1_500, CAME));
    }

    @Test
    void itemsWithoutAPriceAreToldAndNotCountedForNothing() {
        OrderLine unknown = line(MediaKind.DRIVE, null, null, 6, 4, 0);
        OrderCosts costs = costs(placed(unknown));
        assertThat(costs.unpriced()).isEqualTo(6);
        assertThat(costs.lines()).extracting(CostLine::kind).containsExactly(CostKind.DELIVERY);
    }

    @Test
    void itemsThatWereOnlyCountedInAreTold() {
        OrderLine drives = drives(6, 4, 0);
        List<ItemAtCost> three = List.of(item(drives), item(drives), item(drives));
        assertThat(OrderCosts.of(List.of(placed(drives)), three, OrderCostsTests::words)
                        .onlyCounted())
                .containsExactly(Map.entry(new Model(MediaKind.DRIVE, "a MODEL "), 1));
    }

    private static OrderCosts costs(PurchaseOrder order) {
        return OrderCosts.of(List.of(order), List.of(), OrderCostsTests::words);
    }

    private static String words(int number) {
        return "Order " + number;
    }

    private static PurchaseOrder placed(OrderLine line) {
        return order(List.of(line), OrderStep.Kind.PROPOSED, OrderStep.Kind.APPROVED, OrderStep.Kind.PLACED);
    }

    private static PurchaseOrder order(List<OrderLine> lines, OrderStep.Kind... kinds) {
        List<OrderStep> steps = new ArrayList<>();
        for (OrderStep.Kind kind : kinds) {
            boolean placed = kind == OrderStep.Kind.PLACED;
            steps.add(new OrderStep(
                    steps.size() + 1,
                    kind,
                    Instant.EPOCH,
                    new UUID(0, 2),
                    "",
                    placed ? ORDERED : null,
                    placed ? EXPECTED : null,
                    "",
                    null));
        }
        return new PurchaseOrder(
                new UUID(0, 7),
                7,
                new UUID(0, 1),
                "A supplier",
                DeliveredTo.SET,
                1_500,
                null,
                "",
                PurchaseOrder.Source.HAND,
                "",
                lines,
                steps,
                Instant.EPOCH,
                steps.size());
    }

    private static ItemAtCost item(OrderLine line) {
        return new ItemAtCost(
                UUID.randomUUID(), "D-1", line.kind(), line.model(), Ownership.BOUGHT, null, null, line.id());
    }

    private static OrderLine drives(int items, int came, int credited) {
        return line(MediaKind.DRIVE, null, 18_000L, items, came, credited);
    }

    private static OrderLine readers(int items, int came) {
        return line(MediaKind.READER, 5, 4_000L, items, came, 0);
    }

    private static OrderLine line(
            MediaKind kind, @Nullable Integer weeks, @Nullable Long unit, int items, int came, int credited) {
        return new OrderLine(
                UUID.randomUUID(),
                1,
                null,
                kind,
                "A model",
                null,
                null,
                null,
                items,
                weeks,
                unit,
                null,
                "",
                came,
                credited,
                came > 0 ? CAME : null,
                came > 0 ? 1 : 0);
    }

    private static CostLine line(Stage stage, CostKind kind, boolean hired, long minorUnits, LocalDate on) {
        return new CostLine(
                stage,
                kind,
                hired,
                minorUnits,
                kind == CostKind.DELIVERY ? "A supplier" : "A model",
                "Order 7",
                "orders/" + new UUID(0, 7),
                on);
    }
}
