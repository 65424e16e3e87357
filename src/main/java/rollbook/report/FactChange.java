package rollbook.report;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Something that a report tells otherwise than an earlier one did.
 *
 * @param before null if it came
 * @param after null if it is gone
 */
record FactChange(@Nullable Fact before, @Nullable Fact after) {
    /** How much it says against what was told before. */
    enum Weight {
        /** A copy's verdict is another one, or the copy is gone. */
        VERDICT,
        /** An alarm came, or a medium was cleared without proof, or a clearance was withdrawn. */
        ALARM,
        /** What was told is told otherwise. */
        OTHERWISE,
        /** What was told stands, and more came after it. */
        MORE
    }

    static final Comparator<FactChange> WEIGHTIEST_FIRST =
            Comparator.comparing(FactChange::weight).thenComparing(FactChange::fact, Fact.ORDER);

    /** Acts by which a card goes its usual way. */
    private static final Set<String> USUAL_ACTS = Set.of("cleared", "erased");

    FactChange {
        if (before == null && after == null) {
            throw new IllegalArgumentException("a change of nothing");
        }
    }

    /** As it is now, or was if it is gone. */
    Fact fact() {
        return after != null ? after : java.util.Objects.requireNonNull(before);
    }

    boolean came() {
        return before == null;
    }

    boolean isGone() {
        return after == null;
    }

    /** The columns that differ, where it was there before and is now. */
    List<Column> columns() {
        if (before == null || after == null) {
            return List.of();
        }
        return Arrays.stream(Column.values())
                .filter(column -> !before.at(column).equals(after.at(column)))
                .toList();
    }

    Weight weight() {
        return switch (fact().kind()) {
            case COPY ->
                came()
                        ? Weight.MORE
                        : isGone() || columns().contains(Column.VERDICT) ? Weight.VERDICT : Weight.OTHERWISE;
            case ACT -> USUAL_ACTS.contains(fact().at(Column.STATE)) ? Weight.MORE : Weight.ALARM;
            // Where a roll's card goes is told by the acts.
            case ROLL ->
                Set.of(Column.STATE, Column.REASONS).containsAll(columns()) && !came() && !isGone()
                        ? Weight.MORE
                        : Weight.OTHERWISE;
            case SIGNATURE -> Weight.MORE;
            default -> Weight.OTHERWISE;
        };
    }
}
