package rollbook.scenario;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.turnaround.CameraDay;
import rollbook.turnaround.DayPlan;
import rollbook.turnaround.DayResult;
import rollbook.turnaround.Draws;
import rollbook.turnaround.HourLimit;
import rollbook.turnaround.Part;
import rollbook.turnaround.PartUse;
import rollbook.turnaround.Simulation;
import rollbook.web.Display;

/** Plays the day of a scenario and prepares what that tells. */
@Component
class AnswerPages {
    /** Less isn't worth a line, in milliseconds. */
    private static final long SMALLEST_HELD = 60_000;

    private static final int PARTS_AN_HOUR = 3;

    private final Timelines timelines;
    private final AnswerWords words;
    private final Display display;

    AnswerPages(Timelines timelines, AnswerWords words, Display display) {
        this.timelines = timelines;
        this.words = words;
        this.display = display;
    }

    TurnaroundPage.Answers of(ScenarioInputs inputs, Membership membership) {
        DayPlan plan = DayPlans.of(inputs);
        DayResult day = Simulation.run(plan, Draws.MEANS);
        DayNames names = new DayNames(inputs.facts(), display);
        return new TurnaroundPage.Answers(
                words.sentence(plan, day),
                timelines.picture(day, names::of),
                day.cameras().stream().map(this::camera).toList(),
                day.parts().stream().map(use -> use(use, names)).toList(),
                hours(day, names),
                "",
                List.of(),
                new TurnaroundPage.Help(List.of(), ""));
    }

    /** The few answers by which scenarios are compared. */
    record Brief(String sentence, String waiting, String proven, String overtime, String chance) {}

    Brief brief(ScenarioInputs inputs) {
        DayPlan plan = DayPlans.of(inputs);
        DayResult day = Simulation.summary(plan, Draws.MEANS);
        return new Brief(
                words.sentence(plan, day),
                words.minutes(day.waitingMillis()),
                DayTime.clock(day.lastProvenMillis()),
                words.minutes(day.overtimeMillis()),
                "");
    }

    private TurnaroundPage.CameraRow camera(CameraDay camera) {
        return new TurnaroundPage.CameraRow(
                display.text("scenario.camera", camera.name()),
                display.duration(Duration.ofMillis(camera.recordedMillis())),
                words.minutes(camera.waitingMillis()),
                "",
                Integer.toString(camera.cardsPulled()));
    }

    private TurnaroundPage.UseRow use(PartUse use, DayNames names) {
        return new TurnaroundPage.UseRow(
                names.of(use.part()),
                display.duration(Duration.ofMillis(use.busyMillis())),
                display.percent(use.utilisation()),
                use.utilisation());
    }

    /** What held offloads back in each hour, most first. */
    private List<TurnaroundPage.HourRow> hours(DayResult day, DayNames names) {
        Map<Long, List<HourLimit>> byHour = new LinkedHashMap<>();
        day.hours().forEach(limit -> byHour.computeIfAbsent(limit.hourFromMillis(), hour -> new ArrayList<>())
                .add(limit));
        List<TurnaroundPage.HourRow> rows = new ArrayList<>();
        byHour.forEach((hour, limits) -> {
            List<String> held = limits.stream()
                    .filter(limit -> limit.heldMillis() >= SMALLEST_HELD)
                    .sorted((one, other) -> Long.compare(other.heldMillis(), one.heldMillis()))
                    .limit(PARTS_AN_HOUR)
                    .map(limit -> held(limit.part(), limit.heldMillis(), names))
                    .toList();
            if (!held.isEmpty()) {
                rows.add(new TurnaroundPage.HourRow(DayTime.clock(hour), String.join(", ", held)));
            }
        });
        return rows;
    }

    private String held(Part part, long millis, DayNames names) {
        return display.text("scenario.held", names.of(part), words.minutes(millis));
    }
}
