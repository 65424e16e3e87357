package rollbook.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import rollbook.burndown.DayRef;

/** What became of a schedule: days that were cancelled or added, and days from which on a minute is planned otherwise. */
final class PlanChanges {
    /** Minutes of several formats mix differently from day to day; common sense, no source. */
    private static final double WITHIN_THE_USUAL = 0.2;

    private PlanChanges() {}

    /** @param day from which on a planned minute has {@code toBytesPerMinute} */
    record FormatChange(DayRef day, double fromBytesPerMinute, double toBytesPerMinute) {}

    static List<ForecastDay> cancelled(List<ForecastDay> days) {
        return days.stream()
                .filter(day -> day.state() == ForecastDay.State.CANCELLED)
                .toList();
    }

    /** Days that were not in the schedule of an earlier time. */
    static List<ForecastDay> added(List<ForecastDay> days, List<ForecastDay> before) {
        Set<String> known = before.stream().map(PlanChanges::key).collect(Collectors.toSet());
        return days.stream().filter(day -> !known.contains(key(day))).toList();
    }

    private static String key(ForecastDay day) {
        return day.number() + " " + day.unit();
    }

    /** Of each unit, where the planned bytes of a minute change by more than a fifth from a day to its next. */
    static List<FormatChange> formatChanges(List<ForecastDay> days) {
        List<FormatChange> changes = new ArrayList<>();
        for (String unit : days.stream().map(ForecastDay::unit).distinct().toList()) {
            double before = 0;
            for (ForecastDay day : days) {
                double now = day.unit().equals(unit) ? bytesPerMinute(day) : 0;
                if (before > 0 && now > 0 && Math.abs(now / before - 1) > WITHIN_THE_USUAL) {
                    changes.add(new FormatChange(day.ref(), before, now));
                }
                before = now > 0 ? now : before;
            }
        }
        return changes;
    }

    private static double bytesPerMinute(ForecastDay day) {
        boolean counts = day.state() != ForecastDay.State.CANCELLED
                && day.minutes() != null
                && Objects.requireNonNull(day.minutes()).planned() > 0;
        return counts
                ? day.plannedBytes() / Objects.requireNonNull(day.minutes()).planned()
                : 0;
    }
}
