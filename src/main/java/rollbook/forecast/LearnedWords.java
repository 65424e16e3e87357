package rollbook.forecast;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.burndown.DayRef;
import rollbook.learning.LearnedUnit;
import rollbook.learning.LogT;
import rollbook.learning.Remark;
import rollbook.web.Display;

/** What the show has taught of its days, and what became of its schedule, in sentences. */
@Component
class LearnedWords {
    private static final double LOW = 0.1;
    private static final double HIGH = 0.9;
    /** A ratio this near to the plan is called as planned. */
    private static final double AS_PLANNED = 0.005;

    private final Display display;
    private final StorageWords words;

    LearnedWords(Display display, StorageWords words) {
        this.display = display;
        this.words = words;
    }

    /** The days of the first forecast that was kept, and its date. */
    record FirstPlan(LocalDate date, List<ForecastDay> days) {}

    /** A paragraph for each unit, and one for each kind of change. */
    List<String> sentences(StorageForecast forecast, ForecastInput inputs, @Nullable FirstPlan first) {
        List<String> units =
                inputs.days().stream().map(ForecastDay::unit).distinct().toList();
        Stream<String> learned = units.stream()
                .map(unit -> (units.size() == 1 ? "" : display.text("forecast.learned.unit", unit) + " ")
                        + String.join(" ", unit(forecast.learned().unit(unit), inputs)));
        return Stream.concat(learned, changes(forecast, inputs, first)).toList();
    }

    private List<String> unit(LearnedUnit unit, ForecastInput inputs) {
        List<String> sentences = new ArrayList<>();
        sentences.add(level(unit, inputs));
        if (unit.days() > 0 && unit.borrowedFromUnits()) {
            sentences.add(display.text("forecast.learned.borrowed", display.percent(unit.borrowed())));
        }
        LearnedUnit.Apart apart = unit.apart();
        if (apart != null) {
            sentences.add(display.text(
                    "forecast.learned.apart",
                    figures(apart.minutes().level()),
                    figures(apart.bytesPerMinute().level())));
        }
        unit.remarks().forEach(remark -> sentences.add(remark(remark)));
        if (unit.unplannedBytesPerDay() > 0) {
            sentences.add(display.text(
                    "forecast.learned.unplanned-bytes", display.size(Math.round(unit.unplannedBytesPerDay()))));
        }
        return sentences;
    }

    private String level(LearnedUnit unit, ForecastInput inputs) {
        long daysToCome = inputs.days().stream()
                .filter(day -> day.isStillToCome() && day.unit().equals(unit.unit()))
                .count();
        LogT level = unit.ofNextDays((int) Math.max(1, daysToCome));
        if (unit.days() == 0) {
            return unit.borrowedFromUnits()
                    ? display.text("forecast.learned.newcomer", factor(level.median()), range(level))
                    : display.text(
                            "forecast.learned.plan-only", range(unit.belief().predictive()));
        }
        List<ForecastDay> shot = inputs.days().stream()
                .filter(day -> day.isShot() && day.unit().equals(unit.unit()) && day.plannedBytes() > 0)
                .toList();
        double ratio = shot.stream().mapToDouble(ForecastDay::actualBytes).sum()
                / shot.stream().mapToDouble(ForecastDay::plannedBytes).sum();
        String days = NumberRanges.of(shot.stream().map(ForecastDay::number).toList());
        return display.text(
                "forecast.learned.level", shot.size(), days, offPlan(ratio), factor(level.median()), range(level));
    }

    private String offPlan(double ratio) {
        if (Math.abs(ratio - 1) < AS_PLANNED) {
            return display.text("forecast.learned.as-planned");
        }
        return display.text(
                ratio > 1 ? "forecast.learned.over" : "forecast.learned.under", Math.round(Math.abs(ratio - 1) * 100));
    }

    private String figures(LogT level) {
        return display.text("forecast.learned.factor", factor(level.median()), range(level));
    }

    private String range(LogT level) {
        return factor(level.quantile(LOW)) + "–" + factor(level.quantile(HIGH));
    }

    private String factor(double factor) {
        return String.format(Locale.UK, "%.2f", factor);
    }

    private String remark(Remark remark) {
        return display.text(
                "forecast.learned.remark." + remark.kind(),
                remark.dayNumber(),
                remark.intoDayNumber(),
                Double.isNaN(remark.ratio()) ? "" : factor(remark.ratio()));
    }

    private Stream<String> changes(StorageForecast forecast, ForecastInput inputs, @Nullable FirstPlan first) {
        List<String> sentences = new ArrayList<>();
        List<ForecastDay> cancelled = PlanChanges.cancelled(inputs.days());
        if (!cancelled.isEmpty()) {
            sentences.add(display.text("forecast.learned.cancelled", cancelled.size(), days(cancelled, forecast)));
        }
        List<ForecastDay> added = first == null ? List.of() : PlanChanges.added(inputs.days(), first.days());
        if (!added.isEmpty()) {
            sentences.add(display.text(
                    "forecast.learned.added", added.size(), days(added, forecast), words.date(first.date())));
        }
        List<DayRef> overdue = inputs.overdueDays();
        if (!overdue.isEmpty()) {
            sentences.add(display.text(
                    "forecast.learned.overdue",
                    overdue.size(),
                    overdue.stream().map(day -> words.day(day, forecast)).collect(Collectors.joining(", "))));
        }
        List<ForecastDay> incomplete = inputs.days().stream()
                .filter(day -> day.state() == ForecastDay.State.WRAPPED && !day.complete())
                .toList();
        if (!incomplete.isEmpty()) {
            sentences.add(display.text("forecast.learned.incomplete", incomplete.size(), days(incomplete, forecast)));
        }
        PlanChanges.formatChanges(inputs.days())
                .forEach(change -> sentences.add(display.text(
                        "forecast.learned.format",
                        words.day(change.day(), forecast),
                        display.size(Math.round(change.toBytesPerMinute())),
                        display.size(Math.round(change.fromBytesPerMinute())))));
        return sentences.stream();
    }

    private String days(List<ForecastDay> days, StorageForecast forecast) {
        return days.stream().map(day -> words.day(day.ref(), forecast)).collect(Collectors.joining(", "));
    }
}
