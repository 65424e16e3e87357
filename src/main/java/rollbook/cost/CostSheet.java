package rollbook.cost;

import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What media cost a show, added up.
 *
 * @param budgetMinorUnits null if nobody wrote one down
 */
record CostSheet(List<CostLine> lines, @Nullable Long budgetMinorUnits) {
    CostSheet {
        lines = List.copyOf(lines);
    }

    /** A kind's costs, bought and hired apart. */
    record OfKind(CostKind kind, boolean hired, long spent, long committed, long toCome) {
        long total() {
            return Math.addExact(Math.addExact(spent, committed), toCome);
        }
    }

    long of(Stage stage) {
        return sum(line -> line.stage() == stage);
    }

    long total() {
        return sum(line -> true);
    }

    /** What bought, or hired, media cost, deliveries left out. */
    long of(boolean hired) {
        return sum(line -> line.hired() == hired && line.kind() != CostKind.DELIVERY);
    }

    /** Of the budget, once all is paid; below zero if it doesn't suffice. Null without one. */
    @Nullable
    Long left() {
        return budgetMinorUnits == null ? null : Math.subtractExact(budgetMinorUnits, total());
    }

    /** Of the budget, with nothing but what is spent and committed. Null without one. */
    @Nullable
    Long leftToday() {
        return budgetMinorUnits == null
                ? null
                : Math.subtractExact(budgetMinorUnits, Math.addExact(of(Stage.SPENT), of(Stage.COMMITTED)));
    }

    /** In the order of the kinds, what was bought before what was hired; none that costs nothing. */
    List<OfKind> byKind() {
        return Arrays.stream(CostKind.values())
                .flatMap(kind -> Stream.of(ofKind(kind, false), ofKind(kind, true)))
                .filter(row -> row.total() > 0)
                .toList();
    }

    private OfKind ofKind(CostKind kind, boolean hired) {
        return new OfKind(
                kind,
                hired,
                sum(kind, hired, Stage.SPENT),
                sum(kind, hired, Stage.COMMITTED),
                sum(kind, hired, Stage.TO_COME));
    }

    private long sum(CostKind kind, boolean hired, Stage stage) {
        return sum(line -> line.kind() == kind && line.hired() == hired && line.stage() == stage);
    }

    /** @throws ArithmeticException if it passes what a long holds: money is never wrapped round */
    private long sum(Predicate<CostLine> counted) {
        return lines.stream().filter(counted).mapToLong(CostLine::minorUnits).reduce(0, Math::addExact);
    }
}
