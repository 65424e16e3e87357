package rollbook.hire;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * On what terms one item is hired. The day on which it starts and the day on which it is due are the same weekday if it is
 * hired for whole weeks.
 *
 * @param minimumWeeks paid for at least, one or more
 * @param lateDayMinorUnits for each day after the last due date; null if late weeks cost the weekly rate
 * @param periods the first as agreed and one for each extension, each with a later due date
 */
record HireTerms(
        LocalDate startedOn, int minimumWeeks, @Nullable Long lateDayMinorUnits, List<Period> periods) {

    /**
     * @param dueOn until when it was agreed or extended
     * @param weekMinorUnits for weeks that begin before then, and after the due date of the period before
     */
    record Period(LocalDate dueOn, long weekMinorUnits) {}

    HireTerms {
        periods = List.copyOf(periods);
        if (periods.isEmpty() || minimumWeeks < 1) {
            throw new IllegalArgumentException("%d periods, at least %d weeks".formatted(periods.size(), minimumWeeks));
        }
        LocalDate before = startedOn;
        for (Period period : periods) {
            if (period.dueOn().isBefore(before) || period.weekMinorUnits() < 0) {
                throw new IllegalArgumentException(period + " after " + before);
            }
            before = period.dueOn();
        }
    }

    LocalDate dueOn() {
        return last().dueOn();
    }

    /** What a week costs now. */
    long weekMinorUnits() {
        return last().weekMinorUnits();
    }

    /** What a week costs that begins on a date; after the last due date as before it. */
    long weekMinorUnits(LocalDate beginsOn) {
        return periods.stream()
                .filter(period -> beginsOn.isBefore(period.dueOn()))
                .findFirst()
                .orElse(last())
                .weekMinorUnits();
    }

    private Period last() {
        return periods.get(periods.size() - 1);
    }
}
