package rollbook.scenario;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.turnaround.Activity;

/**
 * Activities of a lane that are drawn as one bar: takes on the same card with their set-ups between them.
 *
 * @param busyMillis of the activities themselves, without what lies between them
 * @param activities how many are drawn as one
 */
record Stretch(
        Activity.Kind kind,
        long fromMillis,
        long toMillis,
        long busyMillis,
        int activities,
        @Nullable String card,
        @Nullable String camera,
        @Nullable String part) {
    /** Takes with longer set-ups between them are drawn apart. */
    private static final long LONGEST_GAP_MILLIS = 30 * 60_000L;

    /** @param activities of one lane, in the order of time */
    static List<Stretch> of(List<Activity> activities) {
        List<Stretch> stretches = new ArrayList<>();
        for (Activity activity : activities) {
            Stretch next = new Stretch(
                    activity.kind(),
                    activity.fromMillis(),
                    activity.toMillis(),
                    activity.toMillis() - activity.fromMillis(),
                    1,
                    activity.card(),
                    activity.camera(),
                    activity.part());
            Stretch last = stretches.isEmpty() ? null : stretches.get(stretches.size() - 1);
            if (last != null && last.goesOnWith(next)) {
                stretches.set(stretches.size() - 1, last.with(next));
            } else if (next.fromMillis() < next.toMillis()) {
                stretches.add(next);
            }
        }
        return stretches;
    }

    private boolean goesOnWith(Stretch next) {
        return kind == Activity.Kind.RECORDING
                && next.kind == kind
                && card != null
                && card.equals(next.card)
                && next.fromMillis - toMillis <= LONGEST_GAP_MILLIS;
    }

    private Stretch with(Stretch next) {
        return new Stretch(
                kind, fromMillis, next.toMillis, busyMillis + next.busyMillis, activities + 1, card, camera, part);
    }
}
