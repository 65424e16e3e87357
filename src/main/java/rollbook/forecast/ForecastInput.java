package rollbook.forecast;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import rollbook.burndown.WorkingCalendar;
import rollbook.quantity.Share;

/**
 * All that a forecast is made from; the same input gives the same forecast.
 *
 * @param today the date in the production's zone for which the pools' figures hold
 * @param days every unit's shooting days; on one date the earlier in the list goes first
 * @param fillLevel how much of an item may be filled, such as 95/100
 */
record ForecastInput(
        LocalDate today, List<ForecastDay> days, List<ForecastLeg> legs, Share fillLevel, WorkingCalendar calendar) {
    ForecastInput {
        if (fillLevel.numerator() > fillLevel.denominator()) {
            throw new IllegalArgumentException("Items can't be filled beyond their capacity: " + fillLevel);
        }
        days = days.stream().sorted(Comparator.comparing(ForecastDay::date)).toList();
        legs = List.copyOf(legs);
    }

    /** The date of the last day that isn't cancelled, but never before today. */
    LocalDate endOfShow() {
        return days.stream()
                .filter(day -> day.state() != ForecastDay.State.CANCELLED)
                .map(ForecastDay::date)
                .filter(date -> date.isAfter(today))
                .max(Comparator.naturalOrder())
                .orElse(today);
    }

    /** Days still to come in the order in which they are counted. */
    List<ForecastDay> daysToCome() {
        return days.stream()
                .filter(ForecastDay::isStillToCome)
                .sorted(Comparator.comparing(day -> day.countedOn(today)))
                .toList();
    }
}
