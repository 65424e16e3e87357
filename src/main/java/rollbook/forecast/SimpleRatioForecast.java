package rollbook.forecast;

import java.util.List;
import rollbook.burndown.DayRef;

/**
 * The forecast that scales the rest of the plan by actual ÷ planned of the wrapped days. It knows no chance: one course
 * of the show, one run-out day. It adds up bytes; that rolls stay whole on their item is left to the fill level.
 */
final class SimpleRatioForecast {
    static final String METHOD_ID = "simple-ratio-1";

    private SimpleRatioForecast() {}

    static StorageForecast of(ForecastInput input) {
        PlanRatio ratio = PlanRatio.of(input.days());
        List<DayRef> overdue = input.daysToCome().stream()
                .filter(day -> day.date().isBefore(input.today()))
                .map(ForecastDay::ref)
                .toList();
        return new StorageForecast(
                METHOD_ID,
                input.today(),
                input.endOfShow(),
                ratio,
                input.fillLevel(),
                input.calendar(),
                overdue,
                input.legs().stream()
                        .map(leg -> new PoolRun(input, leg, ratio).forecast())
                        .toList());
    }
}
