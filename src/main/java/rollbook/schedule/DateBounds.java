package rollbook.schedule;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.Errors;

/** Keeps a mistyped year from putting a schedule into another century. */
final class DateBounds {
    private static final int FIRST_YEAR = 2000;
    private static final int LAST_YEAR = 2199;

    private DateBounds() {}

    static void check(String field, @Nullable LocalDate date, Errors errors) {
        if (date != null && (date.getYear() < FIRST_YEAR || date.getYear() > LAST_YEAR)) {
            errors.rejectValue(
                    field,
                    "schedule.invalid.year",
                    new Object[] {Integer.toString(FIRST_YEAR), Integer.toString(LAST_YEAR)},
                    null);
        }
    }

    static void reject(DayTaken taken, Errors errors) {
        errors.rejectValue(taken.field(), taken.messageKey(), taken.arguments().toArray(), null);
    }
}
