package rollbook.forecast;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.burndown.Band;
import rollbook.schedule.DayOutlooks;
import rollbook.schedule.ShootingDay;

/** What the newest forecast expects of shooting days, and which of them the first one didn't know. */
@Component
class ExpectedOfDays implements DayOutlooks {
    private final ForecastRuns runs;

    ExpectedOfDays(ForecastRuns runs) {
        this.runs = runs;
    }

    /** A day as forecasts name it. */
    private record Key(String unit, int number) {}

    @Override
    public Map<UUID, Outlook> of(UUID productionId, List<ShootingDay> days) {
        return runs.daysThenAndNow(productionId)
                .map(known -> outlooks(known, days))
                .orElse(Map.of());
    }

    private static Map<UUID, Outlook> outlooks(ForecastRuns.DaysThenAndNow known, List<ShootingDay> days) {
        Map<Key, Band> expected = new HashMap<>();
        known.recording().points().stream()
                .filter(point -> point.dayBytes() != null)
                .forEach(point ->
                        expected.put(new Key(point.day().unit(), point.day().number()), point.dayBytes()));
        Set<Key> first = known.firstDays().stream()
                .map(day -> new Key(day.unit(), day.number()))
                .collect(Collectors.toSet());
        // A unit whose schedule came later as a whole has no day that was added to it.
        Set<String> firstUnits = first.stream().map(Key::unit).collect(Collectors.toSet());
        Map<UUID, Outlook> outlooks = new HashMap<>();
        for (ShootingDay day : days) {
            Key key = new Key(day.unitName(), day.number());
            outlooks.put(
                    day.id(),
                    new Outlook(
                            expected(expected.get(key)), firstUnits.contains(day.unitName()) && !first.contains(key)));
        }
        return outlooks;
    }

    private static @Nullable Expected expected(@Nullable Band band) {
        return band == null ? null : new Expected(band.p10(), band.p50(), band.p90());
    }
}
