package rollbook.supplier;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Set;
import java.util.UUID;
import rollbook.burndown.LeadTime;
import rollbook.burndown.WorkingCalendar;
import rollbook.ordering.PublicHolidays;

/**
 * Whoever sells or hires out media to a production.
 *
 * @param version for noticing that somebody else changed it meanwhile
 */
public record MediaSupplier(UUID id, SupplierDetails details, int version) {

    public String name() {
        return details.name();
    }

    /** The lead time as the supplier states it. */
    public LeadTime statedLeadTime() {
        return LeadTime.usually(details.leadTimeWorkingDays(), details.slowLeadTimeWorkingDays());
    }

    /**
     * The days on which this supplier works; public holidays are looked up for the years of these dates.
     *
     * @param productions the production's own working days and holidays
     */
    WorkingCalendar calendar(WorkingCalendar productions, LocalDate first, LocalDate last) {
        Set<DayOfWeek> weekend = details.workingDays().isEmpty()
                ? productions.weekend()
                : EnumSet.complementOf(EnumSet.copyOf(details.workingDays()));
        Set<LocalDate> holidays = details.country() == null
                ? productions.holidays()
                : PublicHolidays.of(details.country(), first.getYear(), last.getYear());
        return new WorkingCalendar(weekend, holidays);
    }
}
