package rollbook.forecast;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;

/** Which leg needs somebody first: by the date on which to act, then by how likely the pool runs out. */
final class Urgency {
    private Urgency() {}

    static List<LegForecast> worstFirst(StorageForecast forecast) {
        return forecast.legs().stream()
                .sorted(Comparator.comparing((LegForecast leg) -> actBy(leg, forecast.today()))
                        .thenComparing(leg -> -leg.outlook().chanceOfRunningOut()))
                .toList();
    }

    /** Where it isn't known how more can be had, somebody has to find out today. */
    private static LocalDate actBy(LegForecast leg, LocalDate today) {
        return switch (leg.need()) {
            case NONE -> LocalDate.MAX;
            case NO_SUPPLY, NO_HELP, LATE -> today;
            case ORDER_BY -> Objects.requireNonNull(leg.order()).orderBy();
        };
    }
}
