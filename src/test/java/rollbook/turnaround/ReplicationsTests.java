package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rollbook.turnaround.Replications.HourShare;
import rollbook.turnaround.Replications.Utilisation;

class ReplicationsTests {
    private static final long SEED = 3;

    /** The card is pulled at wrap, minute 10, and read in 10 minutes: 60 GB at 100 MB/s onto a drive that could do 1,000. */
    @Test
    void aDayWithoutChanceIsAlwaysTheSame() {
        Replications days = Replications.of(TestDay.ofOneCard().plan(), SEED, 3);

        assertThat(days.lastProvenMillis()).isEqualTo(always(20 * TestDay.MINUTE));
        assertThat(days.overtimeMinutes()).isEqualTo(always(10));
        assertThat(days.someCameraWaits().value()).isZero();
        assertThat(days.someCardUnproven().value()).isZero();
        assertThat(days.parts())
                .extracting(Utilisation::part)
                .containsExactly(new Part(Part.Kind.READER, "READER"), new Part(Part.Kind.DESTINATION, "DRIVE"));
        assertThat(days.parts().get(0).share()).isEqualTo(0.5);
        assertThat(days.parts().get(1).share()).isCloseTo(0.05, within(1e-9));
        assertThat(days.hours()).containsExactly(new HourShare(0, new Part(Part.Kind.READER, "READER"), 1));
    }

    private static Range always(double value) {
        return new Range(new Estimate(value, value, value), value, value, value);
    }

    /** From the closed form: handling is exponential of 10 minutes, so −10 ln(1 − p) on top of the 10 for reading. */
    @Test
    void quantilesOfTheLastCardAreThoseOfTheHandling() {
        TestDay day = TestDay.ofOneCard();
        day.handling = Delay.exponential(10 * TestDay.MINUTE);
        int count = 4_000;

        Range overtime = Replications.of(day.plan(), SEED, count).overtimeMinutes();

        double deviation = 10 / Math.sqrt(count);
        assertThat(overtime.mean().value()).isCloseTo(20, within(4 * deviation));
        // The exponential’s standard deviation is its mean; 1.96 of them on both sides, to a tenth as it is estimated.
        assertThat(overtime.mean().high() - overtime.mean().low())
                .isCloseTo(2 * 1.96 * deviation, within(0.1 * 2 * 1.96 * deviation));
        assertQuantile(overtime.oneOfTen(), 0.1, count);
        assertQuantile(overtime.half(), 0.5, count);
        assertQuantile(overtime.nineOfTen(), 0.9, count);
    }

    /** 4 standard deviations: √(p (1 − p) / n) over the density there, (1 − p) / 10. */
    private static void assertQuantile(double found, double chance, int count) {
        double deviation = Math.sqrt(chance * (1 - chance) / count) / ((1 - chance) / 10);
        assertThat(found).isCloseTo(10 - 10 * Math.log(1 - chance), within(4 * deviation));
    }

    /**
     * Two cameras, one card each and one more; both are full at 10. CAM 1 is first and gets the third; CAM 2 gets the card
     * that is read in 10 minutes, so waits from 10 to 20, and both wrap at 20.
     */
    @Test
    void whichCameraWaitsIsTold() {
        TestDay day = new TestDay();
        day.cards = 3;
        day.wrapMillis = 20 * TestDay.MINUTE;

        Replications days = Replications.of(day.plan(), SEED, 2);

        assertThat(days.cameras()).extracting(Replications.CameraWaiting::name).containsExactly("CAM 1", "CAM 2");
        assertThat(days.cameras())
                .extracting(camera -> camera.minutes().mean().value())
                .containsExactly(0.0, 10.0);
        assertThat(days.cameras()).extracting(camera -> camera.chance().value()).containsExactly(0.0, 1.0);
        assertThat(days.waitingMinutes().mean().value()).isEqualTo(10);
        assertThat(days.someCameraWaits().value()).isEqualTo(1);
    }

    @Test
    void aCardThatNoReaderIsLeftForIsTold() {
        TestDay day = TestDay.ofOneCard();
        day.mishaps.add(new Mishap.ReaderDies("READER", 5 * TestDay.MINUTE));

        assertThat(Replications.of(day.plan(), SEED, 2).someCardUnproven().value())
                .isEqualTo(1);
    }

    @Test
    void theSameSeedGivesTheSameFigures() {
        DayPlan plan = RandomDay.of(1);
        Replications once = Replications.of(plan, SEED, 300);
        assertThat(Replications.of(plan, SEED, 300)).isEqualTo(once);
        assertThat(Replications.of(plan, SEED + 1, 300)).isNotEqualTo(once);
    }

    @Test
    void theSharesOfAnHourAreAWhole() {
        Replications days = Replications.of(RandomDay.of(2), SEED, 20);
        assertThat(days.hours().stream()
                        .filter(share ->
                                share.hourFromMillis() == days.hours().get(0).hourFromMillis())
                        .mapToDouble(HourShare::share)
                        .sum())
                .isCloseTo(1, within(1e-9));
        assertThat(List.copyOf(days.hours())).isNotEmpty();
    }
}
