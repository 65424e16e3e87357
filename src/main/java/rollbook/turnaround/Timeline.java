package rollbook.turnaround;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Draws the bars of all lanes, or none of them. */
final class Timeline {
    private final List<Lane> lanes = new ArrayList<>();
    private final boolean kept;

    Timeline(boolean kept) {
        this.kept = kept;
    }

    Lane lane(Activity.Lane of, String name) {
        Lane lane = new Lane(of, name, kept);
        if (kept) {
            lanes.add(lane);
        }
        return lane;
    }

    /** In the order in which the lanes were made. */
    List<Activity> activities(long endMillis) {
        List<Activity> activities = new ArrayList<>();
        for (Lane lane : lanes) {
            lane.enter(null, endMillis, null, null);
            lane.bars.sort(Comparator.comparingLong(Activity::fromMillis));
            activities.addAll(lane.bars);
        }
        return activities;
    }

    /** The bars of one lane. Bars of no length are left out. */
    static final class Lane {
        private final Activity.Lane of;
        private final String name;
        private final boolean kept;
        private final List<Activity> bars = new ArrayList<>(0);
        private Activity.@Nullable Kind kind;
        private long sinceMillis;
        private @Nullable Card card;
        private @Nullable String camera;
        private @Nullable String part;

        private Lane(Activity.Lane of, String name, boolean kept) {
            this.of = of;
            this.name = name;
            this.kept = kept;
        }

        /** Ends the bar that is being drawn and begins the next; none if the kind is null. */
        void enter(Activity.@Nullable Kind next, long nowMillis, @Nullable Card concerned, @Nullable String at) {
            if (!kept || next == kind && concerned == card && Objects.equals(at, part)) {
                return;
            }
            if (kind != null && nowMillis > sinceMillis) {
                bars.add(new Activity(
                        of, name, kind, sinceMillis, nowMillis, card == null ? null : card.name, camera, part));
            }
            kind = next;
            sinceMillis = nowMillis;
            card = concerned;
            camera = concerned == null ? null : concerned.cameraName();
            part = at;
        }

        /** A bar beside others. */
        void add(Activity.Kind done, long fromMillis, long toMillis, Card concerned) {
            if (kept && toMillis > fromMillis) {
                bars.add(new Activity(
                        of, name, done, fromMillis, toMillis, concerned.name, concerned.cameraName(), name));
            }
        }
    }
}
