package rollbook.scenario;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import rollbook.quantity.Money;

/** A small day: one camera of 100 MB/s, cards of 512 GB and 1 TB, two readers, an adapter, two drives. */
final class TestFacts {
    static final long MB = 1_000_000;
    static final long GB = 1_000_000_000;

    static final DayFacts DAY = new DayFacts(
            new UUID(1, 2),
            3,
            "Main unit",
            LocalDate.of(2031, 3, 5),
            List.of(new DayFacts.Camera("A", "Main unit", "120", 100 * MB, 24, "plain", "small-512")),
            List.of(
                    new DayFacts.CardType("small-512", "small", 512 * GB, 900 * MB, 6, 10_000L),
                    new DayFacts.CardType("large-1000", "large", 1_000 * GB, 1_200 * MB, 4, null)),
            List.of(new DayFacts.Reader("READER-1", 600 * MB, 5_000L), new DayFacts.Reader("READER-2", 400 * MB, null)),
            List.of(new DayFacts.Adapter("ADAPTER-1", 300 * MB, null)),
            List.of(
                    new DayFacts.Destination("Shuttle", "SHUTTLE-1", true, false, 100, 480 * MB, 0, 500 * MB, 60_000L),
                    new DayFacts.Destination("Array", "ARRAY-1", true, false, 100, 900 * MB, 0, 900 * MB, null),
                    new DayFacts.Destination("Vault", null, false, false, 100, null, 0, null, null)),
            List.of(),
            null);

    static final Money EUR = Money.of("EUR");

    private TestFacts() {}

    static Sheet sheet(String... typed) {
        return sheet(DAY, typed);
    }

    /** @param typed names and values by turns */
    static Sheet sheet(DayFacts facts, String... typed) {
        Map<String, String> values = new LinkedHashMap<>();
        for (int i = 0; i < typed.length; i += 2) {
            values.put(typed[i], typed[i + 1]);
        }
        return Sheet.of(facts, Beginning.of(facts, Map.of(), "", EUR), values, EUR);
    }

    static ScenarioInputs inputs(String... typed) {
        return ScenarioDrafts.inputs(sheet(typed));
    }

    static DayFacts measured(DayFacts.MeasuredWay... ways) {
        return new DayFacts(
                DAY.dayId(),
                DAY.dayNumber(),
                DAY.unitName(),
                DAY.date(),
                DAY.cameras(),
                DAY.cards(),
                DAY.readers(),
                DAY.adapters(),
                DAY.destinations(),
                List.of(ways),
                null);
    }
}
