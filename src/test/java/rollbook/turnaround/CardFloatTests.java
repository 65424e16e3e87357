package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** One camera fills a card in 10 minutes and wraps after 30. */
class CardFloatTests {
    private static final long SEED = 11;

    private final TestDay day = oneCamera();

    /**
     * Read in 10 minutes and cleared in 5, a card is back after 15. With one card the camera waits from 10 to 25; with two
     * from 20 to 25, for the first is back at 25; the third is there at 20, and the wrap comes before a fourth is needed.
     */
    @Test
    void withoutChanceTheTableIsWorkedByHand() {
        day.clearing = Delay.fixed(5 * TestDay.MINUTE);

        CardFloat table = CardFloat.of(day.plan(), "CARD", 0, SEED, 2);

        assertThat(table.enough()).isEqualTo(3);
        assertThat(table.rows()).extracting(CardFloat.Row::cards).containsExactly(1, 2, 3);
        assertThat(table.rows()).extracting(row -> row.waitingMinutes().value()).containsExactly(15.0, 5.0, 0.0);
        assertThat(table.rows())
                .extracting(row -> row.someCameraWaits().value())
                .containsExactly(1.0, 1.0, 0.0);
        assertThat(table.waitsAtMost(0.5)).hasValue(3);
        assertThat(table.waitsAtMost(1)).hasValue(1);
    }

    /** A card that is back at the very moment when it is needed is in time. */
    @Test
    void backInTheNickOfTimeIsInTime() {
        assertThat(CardFloat.of(day.plan(), "CARD", 0, SEED, 2).enough()).isEqualTo(2);
    }

    /**
     * Reading takes no time, clearing an exponential one of 10 minutes on average. The second card is full at 20, when the
     * first has been away for 10. From the closed form: with chance e⁻¹ it is still away, and the camera waits for the first
     * of two, 5 minutes on average without the wrap at 30, and 5 (1 − e⁻²) with it. With three cards it never waits.
     */
    @Test
    void withChanceTheTableAgreesWithTheClosedForm() {
        day.readers = List.of(TestDay.reader("READER", 1_000_000_000));
        day.destinations = List.of(TestDay.destination("DRIVE", 1_000_000_000));
        day.clearing = Delay.exponential(10 * TestDay.MINUTE);
        int days = 4_000;

        CardFloat table = CardFloat.of(day.plan(), "CARD", 0, SEED, days);

        CardFloat.Row two = table.rows().get(1);
        double chance = Math.exp(-1);
        // 4 standard deviations. The square of an exponential time of 5 that is cut at 10 is 50 (1 − 3 e⁻²) on average.
        assertThat(two.someCameraWaits().value())
                .isCloseTo(chance, within(4 * Math.sqrt(chance * (1 - chance) / days)));
        assertThat(two.someCameraWaits().low()).isLessThan(chance);
        assertThat(two.someCameraWaits().high()).isGreaterThan(chance);
        double mean = chance * 5 * (1 - Math.exp(-2));
        double variance = chance * 50 * (1 - 3 * Math.exp(-2)) - mean * mean;
        assertThat(two.waitingMinutes().value()).isCloseTo(mean, within(4 * Math.sqrt(variance / days)));
        assertThat(table.rows().get(2).someCameraWaits().value()).isZero();
        assertThat(table.waitsAtMost(0.05)).hasValue(3);
    }

    /** Two kinds of cards: of the other there may be too few in the plan, which is not this kind’s fault. */
    @Test
    void otherKindsAreAmple() {
        DayPlan plan = day.plan();
        List<CameraShift> cameras = new ArrayList<>(plan.cameras());
        cameras.add(day.shift("CAM 2", "OTHER"));
        Station station = plan.stations()
                .get(0)
                .withReaders(List.of(
                        TestDay.reader("READER", 100),
                        new Reader("READER 2", List.of(new Way("OTHER", null, TestDay.megabytes(100))))));
        DayPlan both = new DayPlan(
                cameras,
                List.of(new CardStock("CARD", day.cardBytes, 1), new CardStock("OTHER", day.cardBytes, 1)),
                Runner.NONE,
                List.of(station),
                List.of());

        assertThat(CardFloat.of(both, "CARD", 0, SEED, 2).enough()).isEqualTo(2);
        assertThat(CardFloat.of(both, "OTHER", 0, SEED, 2).enough()).isEqualTo(2);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CardFloat.of(both, "NONE", 0, SEED, 2))
                .withMessageContaining("cardType");
    }

    private static TestDay oneCamera() {
        TestDay day = new TestDay();
        day.cameras = List.of("CAM 1");
        return day;
    }
}
