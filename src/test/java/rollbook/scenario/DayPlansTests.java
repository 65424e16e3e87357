package rollbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rollbook.quantity.DataRate;
import rollbook.turnaround.CameraShift;
import rollbook.turnaround.DayPlan;
import rollbook.turnaround.DayResult;
import rollbook.turnaround.Draws;
import rollbook.turnaround.Mishap;
import rollbook.turnaround.ReadBack;
import rollbook.turnaround.Reader;
import rollbook.turnaround.Simulation;
import rollbook.turnaround.Station;
import rollbook.turnaround.Way;
import tools.jackson.databind.json.JsonMapper;

/** Worked by hand from the figures of {@link TestFacts}. */
class DayPlansTests {
    private static final long MINUTE = 60_000;

    private static Station station(String... typed) {
        return DayPlans.of(TestFacts.inputs(typed)).stations().get(0);
    }

    private static List<Way> ways(Station station, String reader) {
        return station.readers().stream()
                .filter(one -> one.name().equals(reader))
                .findFirst()
                .map(Reader::ways)
                .orElseThrow();
    }

    private static DataRate megabytes(long megabytes) {
        return DataRate.ofBytesPerSecond(megabytes * TestFacts.MB);
    }

    @Test
    void theCameraWorksFromCallToWrapAndRecordsItsMinutes() {
        DayPlan plan = DayPlans.of(TestFacts.inputs("call", "09:00", "wrap", "18:00", "breaks", "13:00-14:00"));
        CameraShift camera = plan.cameras().get(0);
        assertThat(camera.callMillis()).isEqualTo(9 * 60 * MINUTE);
        assertThat(camera.wrapMillis()).isEqualTo(18 * 60 * MINUTE);
        assertThat(camera.recordedRate()).isEqualTo(megabytes(100));
        // 120 minutes in 8 hours of work: 15 an hour; takes of 3 minutes then come with set-ups of 3 × (60 / 15 − 1) =
        // 9.
        assertThat(camera.takes().take().meanMillis()).isEqualTo(3 * MINUTE);
        assertThat(camera.takes().gap().meanMillis()).isEqualTo(9 * MINUTE);
        DayResult day = Simulation.summary(plan, Draws.MEANS);
        assertThat((double) day.cameras().get(0).recordedMillis() / MINUTE).isCloseTo(120, within(3.0));
    }

    @Test
    void aReaderIsAsFastAsTheSlowestOfCardReaderAndAdapter() {
        assertThat(ways(station(), "READER-1"))
                .containsExactly(
                        new Way("small-512", null, megabytes(600)), new Way("large-1000", null, megabytes(600)));
        assertThat(ways(station("way.READER-1", "ADAPTER-1"), "READER-1"))
                .containsExactly(
                        new Way("small-512", "ADAPTER-1", megabytes(300)),
                        new Way("large-1000", "ADAPTER-1", megabytes(300)));
    }

    @Test
    void aNewAdapterTakesTheReadersPlace() {
        assertThat(ways(station("way.READER-2", "NEW", "new-adapter", "1000"), "READER-2"))
                .as("the small card passes 900 MB/s at most")
                .containsExactly(
                        new Way("small-512", "NEW READER-2", megabytes(900)),
                        new Way("large-1000", "NEW READER-2", megabytes(1000)));
    }

    @Test
    void whatWasMeasuredCountsMoreThanWhatIsStated() {
        DayFacts facts =
                TestFacts.measured(new DayFacts.MeasuredWay("READER-1", null, "small-512", 412 * TestFacts.MB, 6));
        Station station = DayPlans.of(ScenarioDrafts.inputs(TestFacts.sheet(facts)))
                .stations()
                .get(0);
        assertThat(ways(station, "READER-1"))
                .containsExactly(
                        new Way("small-512", null, megabytes(412)), new Way("large-1000", null, megabytes(600)));
    }

    @Test
    void furtherReadersAreLikeTheFastestAndUnusedOnesAreLeftOut() {
        Station station = station("way.READER-2", "OFF", "extra-readers", "2");
        assertThat(station.readers()).extracting(Reader::name).containsExactly("READER-1", "+1", "+2");
        assertThat(ways(station, "+2")).extracting(Way::rate).containsOnly(megabytes(600));
    }

    @Test
    void onlyWhatIsWrittenOnSetIsWaitedFor() {
        assertThat(station().destinations()).extracting(to -> to.name()).containsExactly("Shuttle", "Array");
        Station encoded = station("destination.Array", "ENCODED", "encoder", "700", "kept", "55");
        assertThat(encoded.destinations().get(1).encoded()).isTrue();
        assertThat(encoded.destinations().get(1).keptShare()).isEqualTo(0.55);
    }

    @Test
    void aFasterMediumReadsBackNoSlowerThanItWrites() {
        assertThat(station("write-rate.Shuttle", "900").destinations().get(0).read())
                .isEqualTo(megabytes(900));
        assertThat(station().destinations().get(0).read()).isEqualTo(megabytes(500));
    }

    @Test
    void mishapsAndReadBackAreAsTyped() {
        DayPlan plan = DayPlans.of(TestFacts.inputs(
                "repeat", "3", "reader-dies", "READER-1", "dies-at", "15:00", "read-back", "AFTER_WRAP"));
        assertThat(plan.mishaps())
                .containsExactly(new Mishap.Repeat(3), new Mishap.ReaderDies("READER-1", 15 * 60 * MINUTE));
        assertThat(plan.stations().get(0).readBack().when()).isEqualTo(ReadBack.When.AFTER_WRAP);
    }

    @Test
    void whatIsKeptSaysTheSameWhenItIsReadAgain() {
        ScenarioInputs inputs = TestFacts.inputs("extra-readers", "1", "budget", "1500");
        String json = JsonMapper.shared().writeValueAsString(inputs);
        ScenarioInputs again = JsonMapper.shared().readValue(json, ScenarioInputs.class);
        assertThat(again).isEqualTo(inputs);
        assertThat(DayPlans.of(again)).isEqualTo(DayPlans.of(inputs));
    }
}
