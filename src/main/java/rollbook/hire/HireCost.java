package rollbook.hire;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import rollbook.quantity.ExactDivision;

/**
 * What the hire of one item comes to, in the smallest unit of the production's currency.
 *
 * <p>Weeks are counted from the day on which the hire starts, and a week begun costs a whole one; so many as the minimum are
 * paid for in any case. A week costs the rate that holds on the day on which it begins. Late days cost the agreement's own
 * rate a day, or else each week begun after the due date costs the weekly rate, as far as the minimum hasn't paid for it.
 * Common practice, no source.
 *
 * @param weeks that are paid for, without late ones
 * @param lateDays after the due date
 */
record HireCost(long weeks, long hireMinorUnits, long lateDays, long lateMinorUnits) {
    private static final int WEEK = 7;
    static final HireCost NONE = new HireCost(0, 0, 0, 0);

    long totalMinorUnits() {
        return Math.addExact(hireMinorUnits, lateMinorUnits);
    }

    /** Of an item that goes back on a date; nothing before it starts. */
    static HireCost ifReturnedOn(LocalDate date, HireTerms terms) {
        if (date.isBefore(terms.startedOn())) {
            return NONE;
        }
        LocalDate due = terms.dueOn();
        LocalDate last = date.isBefore(due) ? date : due;
        long begun = weeksBegun(ChronoUnit.DAYS.between(terms.startedOn(), last));
        long weeks = Math.max(begun, terms.minimumWeeks());
        long lateDays = Math.max(0, ChronoUnit.DAYS.between(due, date));
        return new HireCost(weeks, weeks(terms, weeks), lateDays, late(terms, lateDays, weeks - begun));
    }

    /** Of an item that goes back on the day on which it is due. */
    static HireCost untilDue(HireTerms terms) {
        return ifReturnedOn(terms.dueOn(), terms);
    }

    /** What a first week of lateness would add. */
    static long firstLateWeekMinorUnits(HireTerms terms) {
        return ifReturnedOn(terms.dueOn().plusDays(WEEK), terms).totalMinorUnits()
                - untilDue(terms).totalMinorUnits();
    }

    private static long weeks(HireTerms terms, long weeks) {
        long sum = 0;
        for (long week = 0; week < weeks; week++) {
            sum = Math.addExact(sum, terms.weekMinorUnits(terms.startedOn().plusWeeks(week)));
        }
        return sum;
    }

    /** @param paidWeeks after the due date that the minimum has paid for */
    private static long late(HireTerms terms, long lateDays, long paidWeeks) {
        Long day = terms.lateDayMinorUnits();
        return day != null
                ? Math.multiplyExact(lateDays, day)
                : Math.multiplyExact(Math.max(0, weeksBegun(lateDays) - paidWeeks), terms.weekMinorUnits());
    }

    private static long weeksBegun(long days) {
        return ExactDivision.ceil(days, WEEK);
    }
}
