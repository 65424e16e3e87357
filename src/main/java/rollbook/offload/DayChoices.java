package rollbook.offload;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.schedule.DayState;
import rollbook.schedule.ShootingDay;
import rollbook.schedule.ShootingDays;
import rollbook.web.Choice;
import rollbook.web.Display;

/** The shooting days that a roll may belong to. */
@Component
class DayChoices {
    private final ShootingDays days;
    private final Display display;
    private final Clock clock;

    DayChoices(ShootingDays days, Display display, Clock clock) {
        this.days = days;
        this.display = display;
        this.clock = clock;
    }

    /** All days but the cancelled ones, those of the unit first; the chosen one even if it was cancelled since. */
    List<ShootingDay> list(UUID productionId, UUID unitId, @Nullable UUID chosen) {
        return days.list(productionId).stream()
                .filter(day -> day.state() != DayState.CANCELLED || day.id().equals(chosen))
                .sorted(Comparator.comparing(day -> !day.unitId().equals(unitId)))
                .toList();
    }

    List<Choice> choices(List<ShootingDay> list) {
        return list.stream()
                .map(day -> new Choice(
                        day.id().toString(),
                        display.text("offload.day", day.number(), display.shortDate(day.date()), day.unitName())))
                .toList();
    }

    /** The unit's day that is being shot, else the latest that has begun by the production's calendar, else its first. */
    @Nullable
    UUID current(Membership by, List<ShootingDay> list, UUID unitId) {
        List<ShootingDay> own =
                list.stream().filter(day -> day.unitId().equals(unitId)).toList();
        LocalDate today = LocalDate.now(clock.withZone(by.zone()));
        return last(own, day -> day.state() == DayState.SHOOTING)
                .or(() -> last(own, day -> !day.date().isAfter(today)))
                .or(() -> own.stream().findFirst())
                .map(ShootingDay::id)
                .orElse(null);
    }

    private static Optional<ShootingDay> last(List<ShootingDay> list, Predicate<ShootingDay> condition) {
        return list.stream().filter(condition).max(Comparator.comparing(ShootingDay::date));
    }
}
