package rollbook.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.picture.AxisScale;
import rollbook.picture.Words;
import rollbook.schedule.DayOutlooks.Expected;
import rollbook.web.Display;

/** Says what the bars of a unit's days show, and writes their words where they belong. */
@Component
class BarsPictures {
    private static final int LINE = 13;
    private static final double AS_PLANNED = 0.005;

    private final Display display;

    BarsPictures(Display display) {
        this.display = display;
    }

    BarsPicture picture(UUID unitId, UnitBars unit) {
        return new BarsPicture(
                unitId,
                display.text("schedule.bars.title", unit.unit()),
                sentence(unit),
                List.of(drawing(BarsChart.of(unit, 880, 220), "large"), drawing(BarsChart.of(unit, 360, 200), "small")),
                unit.days().stream().map(this::row).toList());
    }

    /** What the wrapped days came to, and what is still to come. */
    String sentence(UnitBars unit) {
        List<String> parts = new ArrayList<>();
        List<UnitBars.Day> wrapped = unit.wrapped();
        if (!wrapped.isEmpty()) {
            long recorded = UnitBars.sum(wrapped, UnitBars.Day::recorded);
            parts.add(display.text(
                    "schedule.bars.wrapped",
                    wrapped.size(),
                    display.size(recorded),
                    against(recorded, UnitBars.sum(wrapped, UnitBars.Day::planned))));
            int unknown = wrapped.stream().mapToInt(UnitBars.Day::unknownRolls).sum();
            if (unknown > 0) {
                parts.add(display.text("schedule.bars.unknown", unknown));
            }
        }
        List<UnitBars.Day> toCome = unit.toCome();
        if (!toCome.isEmpty()) {
            parts.add(display.text(
                    "schedule.bars.to-come", toCome.size(), display.size(UnitBars.sum(toCome, UnitBars.Day::planned))));
        }
        return String.join(" ", parts);
    }

    /** What one day came to, or has come to so far. */
    String sentence(UnitBars.Day day) {
        if (day.isToCome()) {
            Expected expected = day.expected();
            String soFar =
                    display.text("schedule.bars.day.so-far", display.size(day.recorded()), display.size(day.planned()));
            return expected == null
                    ? soFar
                    : soFar + " "
                            + display.text(
                                    "schedule.bars.day.expected",
                                    display.size(expected.medianBytes()),
                                    display.size(expected.lowBytes()),
                                    display.size(expected.highBytes()));
        }
        String unknown = day.unknownRolls() == 0 ? "" : " " + display.text("schedule.bars.unknown", day.unknownRolls());
        return display.text(
                        "schedule.bars.day.over", display.size(day.recorded()), against(day.recorded(), day.planned()))
                + unknown;
    }

    /** 12 % over plan. */
    private String against(long recorded, long planned) {
        if (planned == 0) {
            return display.text("schedule.bars.no-plan");
        }
        double ratio = (double) recorded / planned - 1;
        if (Math.abs(ratio) < AS_PLANNED) {
            return display.text("schedule.bars.as-planned");
        }
        return display.text(ratio > 0 ? "schedule.bars.over" : "schedule.bars.under", display.percent(Math.abs(ratio)));
    }

    private BarsPicture.Row row(UnitBars.Day day) {
        boolean over = day.state() == DayState.WRAPPED;
        Expected expected = day.isToCome() ? day.expected() : null;
        return new BarsPicture.Row(
                display.shortDate(day.date()),
                display.text("schedule.day.label", day.number()),
                remark(day),
                day.planned() == 0 ? null : day.planned(),
                day.recorded() == 0 && !over ? null : day.recorded(),
                over ? difference(day) : "",
                expected == null ? null : expected.medianBytes(),
                expected == null
                        ? ""
                        : display.text(
                                "schedule.bars.range",
                                display.size(expected.lowBytes()),
                                display.size(expected.highBytes())));
    }

    private String difference(UnitBars.Day day) {
        long bytes = day.recorded() - day.planned();
        String sign = bytes > 0 ? "+" : bytes < 0 ? "−" : "";
        String size = sign + display.size(Math.abs(bytes));
        return day.planned() == 0
                ? size
                : display.text(
                        "schedule.bars.difference",
                        size,
                        sign + display.percent(Math.abs((double) bytes / day.planned())));
    }

    private String remark(UnitBars.Day day) {
        List<String> words = new ArrayList<>();
        UnitBars.Remark remark = day.remark();
        if (remark != null) {
            words.add(display.text("schedule.bars.remark." + remark));
        }
        if (day.state() == DayState.SHOOTING) {
            words.add(display.text("schedule.state.SHOOTING"));
        }
        if (day.unknownRolls() > 0) {
            words.add(display.text("schedule.bars.unknown-rolls", day.unknownRolls()));
        }
        return String.join(", ", words);
    }

    private BarsPicture.Drawing drawing(BarsChart chart, String size) {
        AxisScale axis = chart.perDay();
        List<Words> words = new ArrayList<>();
        words.add(new Words(4, axis.topY() - 10, "start", "tick", display.text("schedule.bars.per-day", axis.unit())));
        axis.ticks()
                .forEach(tick -> words.add(new Words(chart.plotLeft() - 6, tick.y() + 4, "end", "tick", tick.label())));
        chart.ticks()
                .forEach(bar -> words.add(new Words(
                        bar.middle(),
                        chart.height() - 8,
                        "middle",
                        "tick",
                        display.text("schedule.day.label", bar.day().number()))));
        if (chart.todayX() != null) {
            words.add(new Words(
                    chart.todayX() + 4, axis.topY() - 10, "start", "label", display.text("schedule.bars.today")));
        }
        names(chart, words);
        List<Words> upright = chart.bars().stream()
                .filter(bar -> bar.day().remark() != null)
                .map(bar -> new Words(
                        bar.middle() + 4,
                        bar.topY() - 4,
                        "start",
                        "tick strong",
                        display.text("schedule.bars.remark." + bar.day().remark())))
                .toList();
        return new BarsPicture.Drawing(chart, size, words, upright);
    }

    /** What the shapes mean is written beside the last day to come, as far as the words don't lie on each other. */
    private void names(BarsChart chart, List<Words> words) {
        BarsChart.Bar last = chart.bars().get(chart.bars().size() - 1);
        double x = chart.plotRight() + 4;
        if (last.plannedHeight() > 0) {
            words.add(new Words(x, last.plannedY() + 4, "start", "tick", display.text("schedule.bars.planned")));
        }
        if (last.expectedHeight() > 0) {
            double apart = last.expectedY() - last.plannedY();
            double y = Math.abs(apart) >= LINE ? last.expectedY() : last.plannedY() + (apart < 0 ? -LINE : LINE);
            words.add(new Words(x, y + 4, "start", "tick", display.text("schedule.bars.expected")));
        }
        if (last.recordedHeight() > LINE) {
            words.add(
                    new Words(x, chart.perDay().baseY() - 4, "start", "tick", display.text("schedule.bars.recorded")));
        }
    }
}
