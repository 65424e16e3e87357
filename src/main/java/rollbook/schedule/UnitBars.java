package rollbook.schedule;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;
import rollbook.schedule.DayOutlooks.Expected;

/** The shooting days of a unit with their bytes, planned against recorded; days in the order of their dates. */
record UnitBars(String unit, LocalDate today, List<Day> days) {

    /**
     * A day's bytes, as recorded.
     *
     * @param planned of a day that began, as planned then
     * @param recorded so far
     * @param unknownRolls rolls that nothing tells the bytes of
     * @param expected null of days that are over, and where no forecast tells
     * @param added whether the schedule didn't have the day when the show was first forecast
     */
    record Day(
            UUID id,
            int number,
            LocalDate date,
            DayState state,
            long planned,
            long recorded,
            int unknownRolls,
            @Nullable Expected expected,
            boolean added) {

        boolean isToCome() {
            return state.open();
        }

        /** What is out of the ordinary about it; null if nothing is. */
        @Nullable
        Remark remark() {
            if (state == DayState.CANCELLED) {
                return Remark.CANCELLED;
            }
            if (state == DayState.WRAPPED && recorded == 0 && unknownRolls == 0) {
                return Remark.NOTHING_RECORDED;
            }
            if (state == DayState.WRAPPED && unknownRolls == 0 && recorded < planned / 2) {
                return Remark.UNDER_HALF;
            }
            if (planned == 0) {
                return Remark.NOT_PLANNED;
            }
            return added ? Remark.ADDED : null;
        }
    }

    /** What is out of the ordinary about a day, told by a word beside its bar. */
    enum Remark {
        CANCELLED,
        NOTHING_RECORDED,
        UNDER_HALF,
        NOT_PLANNED,
        ADDED
    }

    UnitBars {
        days = List.copyOf(days);
    }

    List<Day> wrapped() {
        return days.stream().filter(day -> day.state() == DayState.WRAPPED).toList();
    }

    List<Day> toCome() {
        return days.stream().filter(Day::isToCome).toList();
    }

    static long sum(List<Day> days, ToLongFunction<Day> bytes) {
        return days.stream().mapToLong(bytes).reduce(0, Math::addExact);
    }

    /** The highest thing that is drawn. */
    long highestBytes() {
        return days.stream()
                .filter(day -> day.state() != DayState.CANCELLED)
                .mapToLong(day -> Math.max(
                        Math.max(day.planned(), day.recorded()),
                        day.expected() == null ? 0 : day.expected().highBytes()))
                .max()
                .orElse(0);
    }
}
