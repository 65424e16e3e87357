package rollbook.learning;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.learning.Remark.Kind;

/**
 * One unit's wrapped days, made fit to learn from.
 *
 * @param days that teach a ratio, oldest first
 * @param zeroDays planned, wrapped, nothing recorded
 */
record UnitDays(List<Day> days, int zeroDays, int lastDayNumber, double unplannedBytesPerDay, List<Remark> remarks) {
    /** A day planned smaller than this part of the unit's median is taken together with its neighbour. */
    static final double SMALL_PART = 0.1;

    /** Further off, a day is learned as this far off, up or down. */
    static final double FARTHEST_RATIO = 10;

    /** One day that teaches, or a few taken together. */
    record Day(double planned, double actual, ShotDay.@Nullable Minutes minutes) {
        static Day of(ShotDay day) {
            return new Day(day.plannedBytes(), day.actualBytes(), day.minutes());
        }

        Day plus(ShotDay small) {
            return new Day(
                    planned + small.plannedBytes(),
                    actual + small.actualBytes(),
                    minutes == null || small.minutes() == null ? null : minutes.plus(small.minutes()));
        }

        double logRatio() {
            return bounded(actual / planned);
        }

        double logMinutes() {
            return minutes == null ? Double.NaN : bounded(minutes.actual() / minutes.planned());
        }

        double logBytesPerMinute() {
            return minutes == null ? Double.NaN : bounded(actual / minutes.actual() / (planned / minutes.planned()));
        }

        boolean hasMinutes() {
            return minutes != null && minutes.planned() > 0 && minutes.actual() > 0;
        }

        private static double bounded(double ratio) {
            return Math.log(Math.max(1 / FARTHEST_RATIO, Math.min(FARTHEST_RATIO, ratio)));
        }
    }

    /** @param unordered at least one day */
    static UnitDays of(List<ShotDay> unordered) {
        List<ShotDay> days = unordered.stream()
                .sorted(Comparator.comparing(ShotDay::date).thenComparingInt(ShotDay::number))
                .toList();
        double small = SMALL_PART * medianPlan(days);
        List<ShotDay> teaching = new ArrayList<>();
        List<Remark> remarks = new ArrayList<>();
        int zeroDays = 0;
        double unplanned = 0;
        for (ShotDay day : days) {
            if (day.plannedBytes() == 0) {
                unplanned += day.actualBytes();
                if (day.actualBytes() > 0) {
                    remarks.add(new Remark(Kind.UNPLANNED, day.number(), day.number(), Double.NaN));
                }
            } else if (day.plannedBytes() < small) {
                continue;
            } else if (day.actualBytes() == 0) {
                zeroDays++;
                remarks.add(new Remark(Kind.NOTHING_RECORDED, day.number(), day.number(), 0));
            } else {
                teaching.add(day);
            }
        }
        List<Day> merged = merged(days, teaching, small, remarks);
        remarks.sort(Comparator.comparingInt(Remark::dayNumber).thenComparing(Remark::kind));
        int last = days.get(days.size() - 1).number();
        return new UnitDays(merged, zeroDays, last, unplanned / days.size(), List.copyOf(remarks));
    }

    boolean haveMinutes() {
        return days.stream().allMatch(Day::hasMinutes);
    }

    /** Takes each small day together with the last teaching day before it, or the first after it. */
    private static List<Day> merged(List<ShotDay> days, List<ShotDay> teaching, double small, List<Remark> remarks) {
        List<Day> merged = new ArrayList<>(teaching.stream().map(Day::of).toList());
        int last = -1;
        for (ShotDay day : days) {
            if (last + 1 < teaching.size() && teaching.get(last + 1) == day) {
                last++;
            } else if (day.plannedBytes() > 0 && day.plannedBytes() < small) {
                double ratio = (double) day.actualBytes() / day.plannedBytes();
                if (teaching.isEmpty()) {
                    remarks.add(new Remark(Kind.SKIPPED, day.number(), day.number(), ratio));
                } else {
                    int into = Math.max(last, 0);
                    merged.set(into, merged.get(into).plus(day));
                    remarks.add(new Remark(
                            Kind.MERGED, day.number(), teaching.get(into).number(), ratio));
                }
            }
        }
        for (int i = 0; i < merged.size(); i++) {
            double ratio = merged.get(i).actual() / merged.get(i).planned();
            if (ratio > FARTHEST_RATIO || ratio < 1 / FARTHEST_RATIO) {
                int number = teaching.get(i).number();
                remarks.add(new Remark(Kind.WINSORISED, number, number, ratio));
            }
        }
        return List.copyOf(merged);
    }

    private static double medianPlan(List<ShotDay> days) {
        double[] plans = days.stream()
                .mapToDouble(ShotDay::plannedBytes)
                .filter(planned -> planned > 0)
                .toArray();
        return plans.length == 0 ? 0 : Quantiles.interpolated(plans, 0.5);
    }
}
