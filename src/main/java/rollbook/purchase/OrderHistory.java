package rollbook.purchase;

import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rollbook.purchase.OrderStep.Kind;

/**
 * The steps of an order, and which of them count.
 *
 * @param steps in their order, all that were ever taken
 */
record OrderHistory(List<OrderStep> steps) {
    private static final Set<Kind> REVOCABLE =
            EnumSet.of(Kind.APPROVED, Kind.DECLINED, Kind.PLACED, Kind.PROMISED, Kind.CANCELLED, Kind.CLOSED);

    /** Without those that were taken back, and without the taking back. */
    List<OrderStep> counting() {
        Set<Integer> takenBack = steps.stream()
                .map(OrderStep::takenBackStep)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        return steps.stream()
                .filter(step -> step.kind() != Kind.TAKEN_BACK && !takenBack.contains(step.number()))
                .toList();
    }

    /** The last one of a kind that counts. */
    Optional<OrderStep> last(Kind... kinds) {
        Set<Kind> wanted = EnumSet.of(kinds[0], kinds);
        return counting().stream().filter(step -> wanted.contains(step.kind())).reduce((earlier, later) -> later);
    }

    boolean has(Kind kind) {
        return last(kind).isPresent();
    }

    /**
     * The steps that may be taken back: those on which no later one rests. What the supplier says last rests on nothing
     * but the order being placed.
     *
     * @param received whether a receipt counts; it rests on the order being placed
     */
    List<OrderStep> revocable(boolean received) {
        List<OrderStep> counting = counting();
        return counting.stream()
                .filter(step -> REVOCABLE.contains(step.kind()))
                .filter(step -> step.kind() != Kind.PLACED || !received)
                .filter(step -> counting.stream()
                        .filter(later -> later.number() > step.number())
                        .allMatch(later -> step.kind() == Kind.PROMISED && later.kind() == Kind.PROMISED))
                .toList();
    }
}
