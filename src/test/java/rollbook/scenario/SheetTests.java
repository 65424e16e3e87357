package rollbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SheetTests {
    private static List<String> wrong(Sheet sheet) {
        return sheet.lines().stream()
                .filter(SheetLine::isWrong)
                .map(SheetLine::name)
                .toList();
    }

    @Test
    void whatTheProductionKnowsIsRightAsItBegins() {
        Sheet sheet = TestFacts.sheet();
        assertThat(wrong(sheet)).isEmpty();
        assertThat(sheet.values())
                .containsEntry("minutes.A", "120")
                .containsEntry("cards.small-512", "6")
                .containsEntry("destination.Shuttle", "AS_RECORDED")
                .containsEntry("destination.Vault", "NO")
                .containsEntry("write-rate.Array", "900")
                .containsEntry("card-week", "100")
                .containsEntry("reader-week", "50")
                .containsEntry("drive-price", "600")
                .doesNotContainKey("budget");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "call|noon|scenario.wrong.time",
                "breaks|lunch|scenario.wrong.spans",
                "take|long|scenario.wrong.number",
                "fill|101|scenario.wrong.bounds",
                "batch|1.5|scenario.wrong.count",
                "budget|1500.001|scenario.wrong.money",
                "batch||NotBlank",
                "read-back|SOMETIMES|scenario.wrong.choice",
                "way.READER-1|ADAPTER-9|scenario.wrong.choice",
                "minutes.A|1000|scenario.wrong.too-many-minutes",
                "minutes.A|0|scenario.wrong.no-camera",
                "cards.small-512|0|scenario.wrong.no-card",
                "breaks|08:00-19:00|scenario.wrong.no-time",
                "dies-at|15:00|scenario.wrong.half-said",
                "destination.Array|ENCODED|scenario.wrong.no-encoder",
            })
    void whatCannotBeIsSaidWhereItWasTypedAndStaysAsTyped(String name, String typed, String problem) {
        String value = typed == null ? "" : typed;
        Sheet sheet = TestFacts.sheet(name, value);
        SheetLine asked = sheet.lines().stream()
                .filter(line -> line.name().equals(name))
                .findFirst()
                .orElseThrow();
        assertThat(asked.value()).isEqualTo(value);
        assertThat(sheet.lines().stream()
                        .filter(SheetLine::isWrong)
                        .map(line -> line.problem().key()))
                .contains(problem);
    }

    @Test
    void withoutReaderOrCopyNothingIsPlayed() {
        assertThat(wrong(TestFacts.sheet("way.READER-1", "OFF", "way.READER-2", "OFF")))
                .containsExactly("way.READER-1");
        assertThat(wrong(TestFacts.sheet("way.READER-1", "OFF", "way.READER-2", "OFF", "extra-readers", "1")))
                .isEmpty();
        assertThat(wrong(TestFacts.sheet("destination.Shuttle", "NO", "destination.Array", "NO")))
                .containsExactly("destination.Shuttle");
    }

    @Test
    void anEncoderSaysItsSpeedInOneWay() {
        assertThat(wrong(TestFacts.sheet("destination.Array", "ENCODED", "encoder", "500")))
                .isEmpty();
        assertThat(wrong(TestFacts.sheet("destination.Array", "ENCODED", "encoder-frames", "48")))
                .isEmpty();
        assertThat(wrong(TestFacts.sheet("encoder", "500", "encoder-frames", "48")))
                .containsExactly("encoder-frames");
    }

    @Test
    void whatNobodyElseKnowsIsRememberedAndWhatTheProductionKnowsIsNot() {
        Map<String, Begun> begun = Beginning.of(
                TestFacts.DAY,
                Map.of("take", "7", "cards.small-512", "40", "extra-readers", "3", "reader-week", "99"),
                "Last one",
                TestFacts.EUR);
        assertThat(begun.get("take")).isEqualTo(new Begun("7", Begun.Origin.LAST_SCENARIO, "Last one"));
        assertThat(begun.get("cards.small-512").value()).isEqualTo("6");
        assertThat(begun.get("extra-readers").value()).isEqualTo("0");
        assertThat(begun.get("reader-week").value()).isEqualTo("50");
        assertThat(begun.get("walk").origin()).isEqualTo(Begun.Origin.USUAL);
    }
}
