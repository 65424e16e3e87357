package rollbook.post;

import java.util.Comparator;
import java.util.List;
import rollbook.offload.Roll;

/**
 * A roll as post sees it.
 *
 * @param copies those that concern post; all that there are if none does
 */
record RollAtPost(Roll roll, PostState state, List<CopyAtPost> copies) {
    static final Comparator<RollAtPost> WORST_FIRST = Comparator.comparing(RollAtPost::state)
            .thenComparing(roll -> roll.roll().code());

    /** A copy that differs says how the roll stands, whatever the others are; else the best copy does. */
    static RollAtPost of(Roll roll, List<CopyAtPost> all) {
        List<CopyAtPost> there = all.stream().filter(CopyAtPost::concernsPost).toList();
        PostState best = there.stream()
                .map(CopyAtPost::state)
                .max(Comparator.naturalOrder())
                .orElse(PostState.NOT_SENT);
        boolean differs = there.stream().anyMatch(copy -> copy.state() == PostState.DIFFERS);
        return new RollAtPost(
                roll,
                differs ? PostState.DIFFERS : best,
                there.isEmpty()
                        ? all.stream().filter(copy -> !copy.copy().isErased()).toList()
                        : there);
    }

    /** Those that a person wants to see: of a roll that is proven there the proven ones, else all. */
    public List<CopyAtPost> telling() {
        return state.isDone()
                ? copies.stream().filter(CopyAtPost::isProvenThere).toList()
                : copies;
    }

    boolean isReceived() {
        return copies.stream().anyMatch(CopyAtPost::received);
    }

    boolean isProven() {
        return copies.stream().anyMatch(CopyAtPost::isProvenThere);
    }
}
