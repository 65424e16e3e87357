package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold for any day; days are drawn from seeds. */
class PropertiesTests {
    static LongStream seeds() {
        return LongStream.rangeClosed(RandomDay.FIRST_SEED, RandomDay.LAST_SEED);
    }

    @Test
    void theDrawnDaysReachEveryKindOfBarAndEveryKindOfPart() {
        List<DayResult> days = seeds().mapToObj(PropertiesTests::played).toList();

        assertThat(days.stream()
                        .flatMap(day -> day.activities().stream())
                        .map(Activity::kind)
                        .distinct())
                .containsExactlyInAnyOrder(Activity.Kind.values());
        assertThat(days.stream()
                        .flatMap(day -> day.hours().stream())
                        .map(limit -> limit.part().kind())
                        .distinct())
                .contains(Part.Kind.READERS, Part.Kind.READER, Part.Kind.BUS, Part.Kind.ENCODER, Part.Kind.DESTINATION);
        assertThat(days).anyMatch(day -> day.unprovenCards() > 0);
        assertThat(days).anyMatch(day -> day.waitingMillis() > 0);
        assertThat(days).anyMatch(day -> day.overtimeMillis() > 0);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theSameSeedGivesTheSameTimelineAndTheSummaryIsItsEnd(long seed) {
        DayResult day = played(seed);
        assertThat(played(seed)).isEqualTo(day);
        assertThat(Simulation.summary(RandomDay.of(seed), Draws.of(seed, 0)))
                .isEqualTo(new DayResult(
                        day.cameras(),
                        day.stations(),
                        day.parts(),
                        day.hours(),
                        day.startMillis(),
                        day.wrapMillis(),
                        day.lastProvenMillis(),
                        day.endMillis(),
                        day.unprovenCards(),
                        List.of()));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void everyCardIsInOnePlaceAtEveryInstantAndBlankAtTheEnd(long seed) {
        DayResult day = played(seed);
        Map<String, List<Activity>> lanes = day.activities().stream()
                .filter(bar -> bar.of() == Activity.Lane.CARD)
                .collect(Collectors.groupingBy(Activity::lane));

        assertThat(lanes)
                .hasSize(RandomDay.of(seed).cards().stream()
                        .mapToInt(CardStock::cards)
                        .sum());
        int notBlank = 0;
        for (List<Activity> bars : lanes.values()) {
            long at = day.startMillis();
            for (Activity bar : bars) {
                assertThat(bar.fromMillis()).isEqualTo(at);
                assertThat(bar.card()).isEqualTo(bar.lane());
                assertThat(bar.camera() == null).isEqualTo(bar.kind() == Activity.Kind.BLANK);
                at = bar.toMillis();
            }
            assertThat(at).isEqualTo(day.endMillis());
            Activity.Kind last = bars.get(bars.size() - 1).kind();
            notBlank += last == Activity.Kind.QUEUED ? 1 : 0;
        }
        assertThat(day.unprovenCards()).isGreaterThanOrEqualTo(notBlank);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void camerasAndReadersDoOneThingAtATime(long seed) {
        played(seed).activities().stream()
                .filter(bar -> bar.of() == Activity.Lane.CAMERA || bar.of() == Activity.Lane.READER)
                .collect(Collectors.groupingBy(Activity::lane))
                .values()
                .forEach(bars -> {
                    for (int i = 1; i < bars.size(); i++) {
                        assertThat(bars.get(i).fromMillis())
                                .isGreaterThanOrEqualTo(bars.get(i - 1).toMillis());
                    }
                });
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void everyRecordedByteIsWrittenAndReadBackOnceForEachDestination(long seed) {
        DayPlan plan = withoutMishapsAndChanceOfWork(RandomDay.of(seed));
        DayResult day = Simulation.run(plan, Draws.of(seed, 0));

        for (Station station : plan.stations()) {
            double bytes = 0;
            for (int i = 0; i < plan.cameras().size(); i++) {
                if (plan.cameras().get(i).station().equals(station.name())) {
                    bytes += day.cameras().get(i).recordedBytes();
                }
            }
            for (Destination destination : station.destinations()) {
                double millis = bytes * destination.keptShare() / bytesPerMilli(destination.write());
                if (station.readBack().when() != ReadBack.When.NEVER) {
                    millis += bytes * destination.keptShare() / bytesPerMilli(destination.read());
                }
                long busy = day.parts().stream()
                        .filter(use -> use.part().equals(new Part(Part.Kind.DESTINATION, destination.name())))
                        .mapToLong(PartUse::busyMillis)
                        .sum();
                // Each flow ends on a whole millisecond, so up to one too many for each.
                assertThat((double) busy).isCloseTo(millis, within(2.0 * day.offloads() + 1));
            }
        }
        assertThat(day.unprovenCards()).isZero();
    }

    private static double bytesPerMilli(rollbook.quantity.DataRate rate) {
        return rate.bytesPerSecond().toDouble() / 1000;
    }

    private static DayPlan withoutMishapsAndChanceOfWork(DayPlan plan) {
        List<Station> stations = new ArrayList<>();
        for (Station station : plan.stations()) {
            stations.add(new Station(
                    station.name(),
                    station.readers(),
                    station.hostBus(),
                    station.encoder(),
                    station.destinations(),
                    station.writing(),
                    station.readBack(),
                    station.handling(),
                    station.clearing(),
                    Spread.NONE,
                    0));
        }
        return new DayPlan(plan.cameras(), plan.cards(), plan.runner(), stations, List.of());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whatCamerasRecordedIsOnTheCardsThatWerePulled(long seed) {
        DayPlan plan = RandomDay.of(seed);
        DayResult day = played(seed);
        for (int i = 0; i < plan.cameras().size(); i++) {
            CameraShift shift = plan.cameras().get(i);
            CameraDay camera = day.cameras().get(i);
            long recording = day.activities().stream()
                    .filter(bar -> bar.lane().equals(shift.name()) && bar.kind() == Activity.Kind.RECORDING)
                    .mapToLong(bar -> bar.toMillis() - bar.fromMillis())
                    .sum();
            long waiting = day.activities().stream()
                    .filter(bar -> bar.lane().equals(shift.name()) && bar.kind() == Activity.Kind.WAITING)
                    .mapToLong(bar -> bar.toMillis() - bar.fromMillis())
                    .sum();
            assertThat(camera.recordedMillis()).isEqualTo(recording);
            assertThat(camera.waitingMillis()).isEqualTo(waiting);
            // A full card may hold up to a millisecond more than its whole milliseconds.
            double perMilli = bytesPerMilli(shift.recordedRate());
            assertThat((double) camera.recordedBytes())
                    .isCloseTo(recording * perMilli, within(perMilli * camera.cardsPulled() + 1));
        }
    }

    private static DayResult played(long seed) {
        return Simulation.run(RandomDay.of(seed), Draws.of(seed, 0));
    }
}
