package rollbook.scenario;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.springframework.stereotype.Component;
import rollbook.turnaround.Activity;
import rollbook.turnaround.DayResult;
import rollbook.web.Display;

/** Draws a day that was played, a lane for each camera, reader, destination and card. */
@Component
class Timelines {
    private static final int ROW = 20;
    private static final int PADDING = 3;
    private static final long HOUR = 3_600_000;
    private static final double PER_CENT = 100;

    /** Takes with set-ups between them, which only look like one recording from afar. */
    private static final String TAKES = "takes";

    /** So many letters find room in a bar of the whole width, on a page as narrow as it gets. */
    private static final double LETTERS = 110;

    private static final List<Activity.Lane> ORDER =
            List.of(Activity.Lane.CAMERA, Activity.Lane.READER, Activity.Lane.DESTINATION, Activity.Lane.CARD);

    private final Display display;

    Timelines(Display display) {
        this.display = display;
    }

    /** @param cardName the name of a card as people read it, of its name in the day that was played */
    TimelinePicture picture(DayResult day, UnaryOperator<String> cardName) {
        return new Drawing(day, cardName).picture();
    }

    private final class Drawing {
        private final DayResult day;
        private final UnaryOperator<String> cardName;
        private final long from;
        private final long to;
        private final Set<String> used = new HashSet<>();

        Drawing(DayResult day, UnaryOperator<String> cardName) {
            this.day = day;
            this.cardName = cardName;
            this.from = day.startMillis() / HOUR * HOUR;
            this.to = (Math.max(day.lastProvenMillis(), day.wrapMillis()) / HOUR + 1) * HOUR;
        }

        TimelinePicture picture() {
            List<TimelinePicture.Group> groups = ORDER.stream().map(this::group).toList();
            return new TimelinePicture(
                    hours(),
                    List.of(
                            mark(day.wrapMillis(), "scenario.timeline.wrap"),
                            mark(day.lastProvenMillis(), "scenario.timeline.proven")),
                    groups,
                    key());
        }

        private List<TimelinePicture.Kind> key() {
            List<TimelinePicture.Kind> key = new ArrayList<>();
            for (Activity.Kind kind : Activity.Kind.values()) {
                key.add(new TimelinePicture.Kind(style(kind), word(kind)));
                if (kind == Activity.Kind.RECORDING) {
                    key.add(new TimelinePicture.Kind(TAKES, display.text("scenario.activity.takes")));
                }
            }
            return key.stream().filter(kind -> used.contains(kind.style())).toList();
        }

        private List<TimelinePicture.Mark> hours() {
            List<TimelinePicture.Mark> hours = new ArrayList<>();
            for (long hour = from; hour < to; hour += HOUR) {
                hours.add(new TimelinePicture.Mark(x(hour), DayTime.clock(hour)));
            }
            return hours;
        }

        private TimelinePicture.Mark mark(long millis, String key) {
            return new TimelinePicture.Mark(x(millis), display.text(key, DayTime.clock(millis)));
        }

        private TimelinePicture.Group group(Activity.Lane of) {
            Map<String, List<Activity>> lanes = new LinkedHashMap<>();
            day.activities().stream()
                    .filter(activity -> activity.of() == of && activity.fromMillis() < to)
                    .forEach(activity -> lanes.computeIfAbsent(activity.lane(), lane -> new ArrayList<>())
                            .add(activity));
            List<TimelinePicture.Lane> drawn = new ArrayList<>();
            int idle = 0;
            for (Map.Entry<String, List<Activity>> lane : lanes.entrySet()) {
                List<Stretch> stretches = Stretch.of(lane.getValue()).stream()
                        .filter(stretch -> stretch.kind() != Activity.Kind.BLANK)
                        .toList();
                if (stretches.isEmpty() && of == Activity.Lane.CARD) {
                    idle++;
                } else {
                    drawn.add(
                            lane(of == Activity.Lane.CARD ? cardName.apply(lane.getKey()) : lane.getKey(), stretches));
                }
            }
            return new TimelinePicture.Group(
                    display.text("scenario.lanes." + of),
                    drawn,
                    idle == 0 ? "" : display.text("scenario.lanes.idle", idle));
        }

        /** What overlaps lies in rows below each other. */
        private TimelinePicture.Lane lane(String name, List<Stretch> stretches) {
            List<Long> freeFrom = new ArrayList<>();
            List<TimelinePicture.Bar> bars = new ArrayList<>();
            for (Stretch stretch : stretches) {
                int row = 0;
                while (row < freeFrom.size() && freeFrom.get(row) > stretch.fromMillis()) {
                    row++;
                }
                if (row == freeFrom.size()) {
                    freeFrom.add(stretch.toMillis());
                } else {
                    freeFrom.set(row, stretch.toMillis());
                }
                bars.add(bar(name, stretch, row));
            }
            return new TimelinePicture.Lane(name, Math.max(1, freeFrom.size()) * ROW + 2 * PADDING, bars);
        }

        private TimelinePicture.Bar bar(String lane, Stretch stretch, int row) {
            double width = share(Math.min(to, stretch.toMillis()) - stretch.fromMillis());
            boolean takes = stretch.activities() > 1;
            String busy = display.duration(Duration.ofMillis(stretch.busyMillis()));
            String style = takes ? TAKES : style(stretch.kind());
            used.add(style);
            String word = takes
                    ? display.text("scenario.activity.takes-of", stretch.activities(), busy)
                    : word(stretch.kind());
            TimelinePicture.Cells cells = new TimelinePicture.Cells(
                    word,
                    DayTime.clock(stretch.fromMillis()),
                    DayTime.clock(stretch.toMillis()),
                    busy,
                    concerned(stretch));
            return new TimelinePicture.Bar(
                    x(stretch.fromMillis()),
                    percent(width),
                    PADDING + row * ROW,
                    ROW - 2,
                    style,
                    width / PER_CENT * LETTERS > word.length() + 1 ? word : "",
                    percent(share(stretch.fromMillis() - from) + width / 2),
                    display.text("scenario.bar", lane, word, cells.from(), cells.to(), cells.length(), cells.card()),
                    cells);
        }

        /** The card, and the camera, reader or destination that has to do with it. */
        private String concerned(Stretch stretch) {
            List<String> names = new ArrayList<>();
            if (stretch.card() != null) {
                names.add(cardName.apply(stretch.card()));
            }
            if (stretch.camera() != null) {
                names.add(display.text("scenario.camera", stretch.camera()));
            }
            if (stretch.part() != null) {
                names.add(stretch.part());
            }
            return String.join(", ", names);
        }

        private String word(Activity.Kind kind) {
            return display.text("scenario.activity." + kind);
        }

        private String x(long millis) {
            return percent(share(millis - from));
        }

        private double share(long millis) {
            return millis * PER_CENT / (to - from);
        }
    }

    private static String style(Activity.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String percent(double percent) {
        return String.format(Locale.ROOT, "%.2f%%", percent);
    }
}
