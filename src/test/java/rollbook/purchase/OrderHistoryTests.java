package rollbook.purchase;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.purchase.OrderStep.Kind.APPROVED;
import static rollbook.purchase.OrderStep.Kind.CANCELLED;
import static rollbook.purchase.OrderStep.Kind.CHANGED;
import static rollbook.purchase.OrderStep.Kind.CLOSED;
import static rollbook.purchase.OrderStep.Kind.DECLINED;
import static rollbook.purchase.OrderStep.Kind.PLACED;
import static rollbook.purchase.OrderStep.Kind.PROMISED;
import static rollbook.purchase.OrderStep.Kind.PROPOSED;
import static rollbook.purchase.OrderStep.Kind.TAKEN_BACK;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rollbook.production.MediaKind;
import rollbook.purchase.OrderStep.Kind;
import rollbook.purchase.PurchaseOrder.State;
import rollbook.supplier.DeliveredTo;

/** States, what may be taken back, and money; all worked by hand. */
class OrderHistoryTests {
    private static final LocalDate ORDERED = LocalDate.of(2031, 3, 3);
    private static final LocalDate EXPECTED = LocalDate.of(2031, 3, 7);
    private final List<OrderStep> steps = new ArrayList<>();

    private void step(Kind kind) {
        step(kind, null);
    }

    private void step(Kind kind, Integer takesBack) {
        int number = steps.size() + 1;
        LocalDate expected = kind == PLACED ? EXPECTED : kind == PROMISED ? EXPECTED.plusDays(number) : null;
        steps.add(new OrderStep(
                number,
                kind,
                Instant.EPOCH,
                new UUID(0, 1),
                "Wren",
                kind == PLACED ? ORDERED : null,
                expected,
                "",
                takesBack));
    }

    private void steps(Kind... kinds) {
        Arrays.stream(kinds).forEach(this::step);
    }

    private static OrderLine line(int items, Integer weeks, Long unit, int came, int credited) {
        return new OrderLine(
                UUID.randomUUID(),
                1,
                null,
                MediaKind.DRIVE,
                "drive",
                1L,
                null,
                null,
                items,
                weeks,
                unit,
                null,
                "",
                came,
                credited,
                came > 0 ? EXPECTED : null,
                came > 0 ? 1 : 0);
    }

    private PurchaseOrder order(OrderLine... lines) {
        return new PurchaseOrder(
                UUID.randomUUID(),
                1,
                new UUID(0, 2),
                "shop",
                DeliveredTo.OFFICE,
                2_500,
                null,
                "",
                PurchaseOrder.Source.HAND,
                "",
                List.of(lines),
                steps,
                Instant.EPOCH,
                0);
    }

    private PurchaseOrder order(int items, int came, int credited) {
        return order(line(items, null, 100L, came, credited));
    }

    private List<Kind> revocable(boolean received) {
        return new OrderHistory(steps)
                .revocable(received).stream().map(OrderStep::kind).toList();
    }

    @Test
    void itStandsAsItsLastStepThatCountsSays() {
        steps(PROPOSED, CHANGED);
        assertThat(order(5, 0, 0).state()).isEqualTo(State.PROPOSED);
        step(APPROVED);
        assertThat(order(5, 0, 0).state()).isEqualTo(State.APPROVED);
        step(PLACED);
        assertThat(order(5, 0, 0).state()).isEqualTo(State.PLACED);
        assertThat(order(5, 3, 0).state()).isEqualTo(State.PART_ARRIVED);
        assertThat(order(5, 3, 2).state()).as("the rest is credited").isEqualTo(State.ARRIVED);
        assertThat(order(5, 5, 0).state()).isEqualTo(State.ARRIVED);
        step(CLOSED);
        assertThat(order(5, 5, 0).state()).isEqualTo(State.CLOSED);
        step(TAKEN_BACK, 5);
        assertThat(order(5, 5, 0).state()).isEqualTo(State.ARRIVED);
    }

    @Test
    void whatIsCalledOffIsCancelledBeforeAnythingCameAndArrivedAfter() {
        steps(PROPOSED, APPROVED, PLACED, CANCELLED);
        assertThat(order(5, 0, 0).state()).isEqualTo(State.CANCELLED);
        assertThat(order(5, 0, 0).left()).isZero();
        assertThat(order(5, 3, 0).state()).isEqualTo(State.ARRIVED);
        assertThat(order(5, 3, 0).left()).isZero();
        assertThat(order(5, 3, 0).takesReceipts()).isFalse();
    }

    @Test
    void onlyAStepOnWhichNoLaterOneRestsIsTakenBack() {
        steps(PROPOSED);
        assertThat(revocable(false)).isEmpty();
        steps(CHANGED, APPROVED);
        assertThat(revocable(false)).containsExactly(APPROVED);
        steps(PLACED);
        assertThat(revocable(false)).containsExactly(PLACED);
        assertThat(revocable(true)).as("something came").isEmpty();
        steps(PROMISED, PROMISED);
        assertThat(revocable(true)).containsExactly(PROMISED, PROMISED);
        steps(CLOSED);
        assertThat(revocable(true)).containsExactly(CLOSED);
        step(TAKEN_BACK, 7);
        step(TAKEN_BACK, 5);
        step(TAKEN_BACK, 6);
        assertThat(revocable(false)).containsExactly(PLACED);
    }

    @Test
    void whatIsDeclinedComesBackToWhereItWas() {
        steps(PROPOSED, DECLINED);
        assertThat(order(5, 0, 0).state()).isEqualTo(State.DECLINED);
        assertThat(revocable(false)).containsExactly(DECLINED);
        step(TAKEN_BACK, 2);
        assertThat(order(5, 0, 0).state()).isEqualTo(State.PROPOSED);
    }

    @Test
    void theDateIsWhatTheSupplierSaidLastAndDoesNotCountOnceTakenBack() {
        steps(PROPOSED, APPROVED, PLACED);
        assertThat(order(5, 0, 0).expectedOn()).isEqualTo(EXPECTED);
        assertThat(order(5, 0, 0).isOverdue(EXPECTED)).isFalse();
        assertThat(order(5, 0, 0).isOverdue(EXPECTED.plusDays(1))).isTrue();
        steps(PROMISED, PROMISED);
        assertThat(order(5, 0, 0).expectedOn()).isEqualTo(EXPECTED.plusDays(5));
        assertThat(order(5, 0, 0).isOverdue(EXPECTED.plusDays(1))).isFalse();
        step(TAKEN_BACK, 5);
        assertThat(order(5, 0, 0).expectedOn()).isEqualTo(EXPECTED.plusDays(4));
        assertThat(order(5, 0, 0).orderedOn()).isEqualTo(ORDERED);
        assertThat(order(5, 5, 0).isOverdue(EXPECTED.plusDays(30)))
                .as("all of it came")
                .isFalse();
    }

    // 5 × 180.50 bought and 2 × 45.00 for 3 weeks, delivered for 25.00: 902.50 + 270.00 + 25.00 = 1197.50.
    @Test
    void theTotalIsItemsTimesWeeksTimesPriceAndTheDelivery() {
        steps(PROPOSED);
        OrderLine bought = line(5, null, 18_050L, 0, 0);
        OrderLine hired = line(2, 3, 4_500L, 0, 0);
        assertThat(order(bought, hired).totalMinorUnits()).isEqualTo(119_750);
        assertThat(order(bought, hired).owedMinorUnits())
                .as("nothing before it is placed")
                .isZero();
        assertThat(order(bought, line(1, null, null, 0, 0)).totalMinorUnits())
                .as("a price isn’t known")
                .isNull();
    }

    // Of 5 × 180.50 and a delivery of 25.00: one credited leaves 4 × 180.50 + 25.00 = 747.00; three came and the rest
    // is
    // called off: 3 × 180.50 + 25.00 = 566.50.
    @Test
    void whatIsCreditedOrCalledOffIsNotOwed() {
        steps(PROPOSED, APPROVED, PLACED);
        assertThat(order(line(5, null, 18_050L, 0, 0)).owedMinorUnits()).isEqualTo(92_750);
        assertThat(order(line(5, null, 18_050L, 3, 1)).owedMinorUnits()).isEqualTo(74_700);
        step(CANCELLED);
        assertThat(order(line(5, null, 18_050L, 3, 0)).owedMinorUnits()).isEqualTo(56_650);
        assertThat(order(line(5, null, 18_050L, 0, 0)).owedMinorUnits()).isZero();
        assertThat(order(line(5, null, null, 1, 0)).owedMinorUnits()).isNull();
    }
}
