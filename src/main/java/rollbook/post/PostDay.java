package rollbook.post;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import rollbook.offload.Roll;

/**
 * The rolls of a shooting day.
 *
 * @param rolls the worst first
 */
record PostDay(UUID dayId, int number, String unitName, LocalDate date, List<RollAtPost> rolls) {
    private static final Comparator<PostDay> WORST_FIRST =
            Comparator.comparing(PostDay::worst).thenComparing(PostDay::date).thenComparing(PostDay::unitName);

    /** The days of the rolls: the one with the worst roll first, of days that are alike the earlier. */
    static List<PostDay> of(List<RollAtPost> rolls) {
        Map<UUID, List<RollAtPost>> byDay = new LinkedHashMap<>();
        rolls.forEach(roll -> byDay.computeIfAbsent(roll.roll().dayId(), day -> new ArrayList<>())
                .add(roll));
        return byDay.values().stream()
                .map(ofDay -> {
                    Roll first = ofDay.get(0).roll();
                    return new PostDay(
                            first.dayId(),
                            first.dayNumber(),
                            first.unitName(),
                            first.dayDate(),
                            ofDay.stream().sorted(RollAtPost.WORST_FIRST).toList());
                })
                .sorted(WORST_FIRST)
                .toList();
    }

    PostState worst() {
        return rolls.get(0).state();
    }

    /** Whether every roll is proven at post. */
    public boolean isDone() {
        return worst().isDone();
    }
}
