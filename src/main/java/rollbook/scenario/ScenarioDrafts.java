package rollbook.scenario;

import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Service;
import rollbook.production.Membership;
import rollbook.quantity.Money;
import rollbook.web.NotFoundException;

/** Days under assumptions before they are kept. */
@Service
public class ScenarioDrafts {
    private final DayFactsReading reading;
    private final Scenarios scenarios;

    ScenarioDrafts(DayFactsReading reading, Scenarios scenarios) {
        this.reading = reading;
        this.scenarios = scenarios;
    }

    /**
     * Keeps a day as the production knows it, with some figures changed.
     *
     * @param figures by the names under which the form sends them
     * @throws NotFoundException if this production has no such day
     * @throws IllegalArgumentException if the day can't be played so
     */
    public UUID save(Membership by, String name, UUID dayId, Map<String, String> figures) {
        DayFacts facts = reading.of(by, dayId).chosen();
        if (Missing.of(facts) != Missing.NOTHING) {
            throw new IllegalArgumentException("Lacking on this day: " + Missing.of(facts));
        }
        Sheet sheet = sheet(by, facts, figures);
        if (!sheet.isRight()) {
            throw new IllegalArgumentException("Figures that can't be: "
                    + sheet.lines().stream().filter(SheetLine::isWrong).toList());
        }
        return scenarios.save(by, name, inputs(sheet));
    }

    /** The form of a day as the production knows it and the scenario saved last, with what was typed. */
    Sheet sheet(Membership membership, DayFacts facts, Map<String, String> typed) {
        Money money = Money.of(membership.currency());
        Map<String, Begun> begun = scenarios
                .latest(membership.productionId())
                .map(last -> Beginning.of(facts, last.inputs().values(), last.name(), money))
                .orElseGet(() -> Beginning.of(facts, Map.of(), "", money));
        return Sheet.of(facts, begun, typed, money);
    }

    /** Of a right sheet. */
    static ScenarioInputs inputs(Sheet sheet) {
        return new ScenarioInputs(
                sheet.facts(), sheet.values(), seed(sheet.facts().dayId()), ScenarioInputs.METHOD_ID);
    }

    /** Always the same for a day: then what is changed makes the difference, and not chance. */
    private static long seed(UUID dayId) {
        return dayId.getMostSignificantBits() ^ dayId.getLeastSignificantBits();
    }
}
