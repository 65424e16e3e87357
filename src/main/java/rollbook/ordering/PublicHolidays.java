package rollbook.ordering;

import de.focus_shift.jollyday.core.HolidayManager;
import de.focus_shift.jollyday.core.HolidayType;
import de.focus_shift.jollyday.core.ManagerParameters;
import java.time.LocalDate;
import java.time.Year;
import java.util.Collections;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Public holidays of countries, the ones of the whole country: those of a part of it are left out. They are what the
 * library's calendars know; a holiday that was moved or added this year is to be entered by hand.
 */
public final class PublicHolidays {
    private PublicHolidays() {}

    /** Codes of ISO 3166-1, two capital letters, of the countries that are known. */
    public static SortedSet<String> countries() {
        SortedSet<String> codes = new TreeSet<>();
        for (String code : HolidayManager.getSupportedCalendarCodes()) {
            // Among them are the calendars of exchanges and of payment systems.
            if (code.length() == 2) {
                codes.add(code.toUpperCase(Locale.ROOT));
            }
        }
        return Collections.unmodifiableSortedSet(codes);
    }

    /**
     * The holidays from the first to the last of these years, both included.
     *
     * @param country code of ISO 3166-1, two capital letters
     * @throws IllegalArgumentException if the country isn't known
     */
    public static SortedSet<LocalDate> of(String country, int firstYear, int lastYear) {
        if (!countries().contains(country)) {
            throw new IllegalArgumentException("No holidays are known for " + country);
        }
        HolidayManager manager = HolidayManager.getInstance(ManagerParameters.create(country.toLowerCase(Locale.ROOT)));
        SortedSet<LocalDate> dates = new TreeSet<>();
        for (int year = firstYear; year <= lastYear; year++) {
            manager.getHolidays(Year.of(year), HolidayType.PUBLIC_HOLIDAY)
                    .forEach(holiday -> dates.add(holiday.getDate()));
        }
        return Collections.unmodifiableSortedSet(dates);
    }
}
