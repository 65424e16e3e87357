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
import rollbook.turnaround.Replications;
import rollbook.turnaround.Simulation;
import rollbook.web.Display;

/** Plays the day of a scenario and prepares what that tells. */
@Component
class AnswerPages {
    /** Less isn't worth a line, in milliseconds. */
    private static final long SMALLEST_HELD = 60_000;

    private static final int PARTS_AN_HOUR = 3;
    private static final int REPLICATES = 200;

    private final Timelines timelines;
    private final AnswerWords words;
    private final FloatWords floats;
    private final ChangeWords changes;
    private final Display display;

    AnswerPages(Timelines timelines, AnswerWords words, FloatWords floats, ChangeWords changes, Display display) {
        this.timelines = timelines;
        this.words = words;
        this.floats = floats;
        this.changes = changes;
        this.display = display;
    }

    TurnaroundPage.Answers of(ScenarioInputs inputs, Membership membership) {
        DayPlan plan = DayPlans.of(inputs);
        DayResult day = Simulation.run(plan, Draws.MEANS);
        Replications days = Replications.of(plan, inputs.seed(), REPLICATES);
        DayNames names = new DayNames(inputs.facts(), display);
        ChangeWords.Tried tried = changes.tried(inputs, plan, names, membership);
        return new TurnaroundPage.Answers(
                (words.sentence(plan, day) + " " + tried.most()).strip(),
                timelines.picture(day, names::of),
                cameras(day, days),
                day.parts().stream().map(use -> use(use, names)).toList(),
                hours(day, names),
                chances(days),
                floats.of(inputs, plan, names),
                tried.help());
    }

    /** The few answers by which scenarios are compared. */
    record Brief(String sentence, String waiting, String proven, String overtime, String chance) {}

    Brief brief(ScenarioInputs inputs) {
        DayPlan plan = DayPlans.of(inputs);
        DayResult day = Simulation.summary(plan, Draws.MEANS);
        return new Brief(
                words.sentence(plan, day),
                words.minutes(day.waitingMillis()),
                words.time(day.lastProvenMillis()),
                words.minutes(day.overtimeMillis()),
                display.percent(Replications.of(plan, inputs.seed(), REPLICATES)
                        .someCameraWaits()
                        .value()));
    }

    private String chances(Replications days) {
        return display.text(
                "scenario.chances",
                days.replicates(),
                display.percent(days.someCameraWaits().value()),
                floats.percents(days.someCameraWaits()),
                words.time(Math.round(days.lastProvenMillis().oneOfTen())),
                words.time(Math.round(days.lastProvenMillis().nineOfTen())));
    }

    private List<TurnaroundPage.CameraRow> cameras(DayResult day, Replications days) {
        List<TurnaroundPage.CameraRow> rows = new ArrayList<>();
        for (int i = 0; i < day.cameras().size(); i++) {
            rows.add(camera(day.cameras().get(i), days.cameras().get(i)));
        }
        return rows;
    }

    private TurnaroundPage.CameraRow camera(CameraDay camera, Replications.CameraWaiting waiting) {
        return new TurnaroundPage.CameraRow(
                display.text("scenario.camera", camera.name()),
                display.duration(Duration.ofMillis(camera.recordedMillis())),
                words.minutes(camera.waitingMillis()),
                waiting.chance().value() == 0
                        ? display.text("scenario.cameras.never", REPLICATES)
                        : display.text(
                                "scenario.cameras.waits",
                                display.percent(waiting.chance().value()),
                                Math.round(waiting.minutes().mean().value()),
                                Math.round(waiting.minutes().nineOfTen())),
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
        day.hours()
                .forEach(limit -> byHour.computeIfAbsent(limit.hourFromMillis(), hour -> new ArrayList<>())
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
