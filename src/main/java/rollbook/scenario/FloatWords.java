package rollbook.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.springframework.stereotype.Component;
import rollbook.turnaround.CameraShift;
import rollbook.turnaround.CardFloat;
import rollbook.turnaround.CardStock;
import rollbook.turnaround.DayPlan;
import rollbook.turnaround.Estimate;
import rollbook.web.Display;

/** Finds how many cards must float, and says it. */
@Component
class FloatWords {
    private static final int REPLICATES = 200;
    /** Of twenty days one may go wrong. */
    private static final double ONE_DAY_OF_TWENTY = 0.05;

    private final Display display;

    FloatWords(Display display) {
        this.display = display;
    }

    List<TurnaroundPage.FloatPart> of(ScenarioInputs inputs, DayPlan plan, DayNames names) {
        List<TurnaroundPage.FloatPart> parts = new ArrayList<>();
        plan.cameras().stream()
                .map(CameraShift::cardType)
                .distinct()
                .forEach(type -> parts.add(part(
                        CardFloat.of(plan, type, ONE_DAY_OF_TWENTY, inputs.seed(), REPLICATES),
                        stock(plan, type),
                        names)));
        return parts;
    }

    private static int stock(DayPlan plan, String type) {
        return plan.cards().stream()
                .filter(stock -> stock.cardType().equals(type))
                .mapToInt(CardStock::cards)
                .sum();
    }

    private TurnaroundPage.FloatPart part(CardFloat found, int planned, DayNames names) {
        OptionalInt safe = found.waitsAtMost(ONE_DAY_OF_TWENTY);
        return new TurnaroundPage.FloatPart(
                names.model(found.cardType()),
                safe.isPresent()
                        ? display.text("scenario.float.sentence", found.enough(), safe.getAsInt(), planned)
                        : display.text("scenario.float.sentence.open", found.enough(), planned),
                found.rows().stream().map(row -> row(row, planned)).toList());
    }

    private TurnaroundPage.FloatRow row(CardFloat.Row row, int planned) {
        return new TurnaroundPage.FloatRow(
                display.text("scenario.float.row", row.cards()),
                display.percent(row.someCameraWaits().value()),
                percents(row.someCameraWaits()),
                display.text(
                        "web.display.minutes", Math.round(row.waitingMinutes().value())),
                row.waitingMinutes().low() == row.waitingMinutes().high()
                        ? ""
                        : display.text(
                                "scenario.range",
                                Math.round(Math.max(0, row.waitingMinutes().low())),
                                Math.round(row.waitingMinutes().high())),
                row.cards() == planned);
    }

    String percents(Estimate share) {
        return display.text("scenario.range", display.percent(share.low()), display.percent(share.high()));
    }
}
