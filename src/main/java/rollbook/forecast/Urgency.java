package rollbook.forecast;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/** Which leg needs somebody first: by the date on which to act, then by the date on which the pool runs out. */
final class Urgency {
    private Urgency() {}

    static List<LegForecast> worstFirst(StorageForecast forecast) {
        return forecast.legs().stream()
                .sorted(Comparator.comparing((LegForecast leg) -> actBy(leg, forecast.today()))
                        .thenComparing(leg -> leg.lastsToTheEnd() ? LocalDate.MAX : leg.runOutOn()))
                .toList();
    }

    /** Where it isn't known how more can be had, somebody has to find out today. */
    private static LocalDate actBy(LegForecast leg, LocalDate today) {
        return switch (leg.flag()) {
            case NONE -> LocalDate.MAX;
            case NO_SUPPLY -> today;
            case ORDER_BY, LATE -> leg.order().orderBy();
        };
    }
}
