package rollbook.forecast;

import java.time.LocalDate;
import java.util.List;
import rollbook.burndown.DayRef;
import rollbook.burndown.WorkingCalendar;
import rollbook.quantity.Share;

/**
 * A forecast with what it was made from, so that each figure can be traced.
 *
 * @param methodId names the method and its version; its description is the message {@code forecast.method.<methodId>}
 * @param overdueDays days dated before today that aren't wrapped; what is still expected of them is counted today
 */
public record StorageForecast(
        String methodId,
        LocalDate today,
        LocalDate endOfShow,
        PlanRatio ratio,
        Share fillLevel,
        WorkingCalendar calendar,
        List<DayRef> overdueDays,
        List<LegForecast> legs) {
    public StorageForecast {
        overdueDays = List.copyOf(overdueDays);
        legs = List.copyOf(legs);
    }
}
