package rollbook.schedule;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.web.Display;

/** Says in a sentence or two where the show stands. */
@Component
class WhereWeAre {
    private final Display display;

    WhereWeAre(Display display) {
        this.display = display;
    }

    String sentence(List<UnitDays> units) {
        List<UnitDays> scheduled =
                units.stream().filter(unit -> !unit.counted().isEmpty()).toList();
        if (scheduled.isEmpty()) {
            return display.text("schedule.where.none");
        }
        String each = scheduled.stream()
                .map(unit -> scheduled.size() == 1
                        ? ofUnit(unit)
                        : display.text("schedule.where.unit", unit.unit().name(), ofUnit(unit)))
                .collect(Collectors.joining(" "));
        List<ShootingDay> all =
                scheduled.stream().flatMap(unit -> unit.counted().stream()).toList();
        if (all.stream().allMatch(day -> day.state() == DayState.WRAPPED)) {
            return each;
        }
        LocalDate last = UnitDays.lastDate(all).orElseThrow();
        return each + " " + display.text("schedule.where.wraps", display.date(last));
    }

    private String ofUnit(UnitDays unit) {
        List<ShootingDay> counted = unit.counted();
        Optional<ShootingDay> shooting = unit.first(DayState.SHOOTING);
        if (shooting.isPresent()) {
            return display.text("schedule.where.shooting", label(shooting.get(), counted));
        }
        return unit.first(DayState.PLANNED)
                .map(next -> display.text("schedule.where.next", label(next, counted), display.shortDate(next.date())))
                .orElseGet(() -> display.text("schedule.where.all-wrapped", counted.size()));
    }

    /** Day 11 of 24, unless the numbers don't run from 1 without a gap. */
    private String label(ShootingDay day, List<ShootingDay> counted) {
        int place = counted.indexOf(day) + 1;
        boolean plain = place == day.number();
        return plain
                ? display.text("schedule.where.day", day.number(), counted.size())
                : display.text("schedule.where.day-place", day.number(), place, counted.size());
    }
}
