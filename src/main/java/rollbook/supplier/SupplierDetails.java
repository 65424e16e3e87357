package rollbook.supplier;

import java.time.DayOfWeek;
import java.time.LocalTime;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a supplier.
 *
 * @param country two letters of ISO 3166-1, for its public holidays; null for the production's own holidays
 * @param workingDays the weekdays on which it takes and sends orders; empty for the production's own
 * @param orderCutOff in the production's time zone: what is ordered later counts as ordered on the next working day
 * @param deliveryMinorUnits price of a delivery, whatever is in it
 * @param leadTimeWorkingDays as stated, from the order to the delivery: half of all deliveries take no longer
 * @param slowLeadTimeWorkingDays as stated: nine deliveries of ten take no longer
 */
public record SupplierDetails(
        String name,
        @Nullable String country,
        Set<DayOfWeek> workingDays,
        LocalTime orderCutOff,
        long deliveryMinorUnits,
        int leadTimeWorkingDays,
        int slowLeadTimeWorkingDays,
        String note) {}
