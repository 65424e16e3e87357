package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;

/** On days drawn from a seed, which is the repetition. */
class CardFloatPropertyTests {
    @RepeatedTest(20)
    void withMoreCardsTheChanceAndTheWaitingFall(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        DayPlan plan = RandomDay.of(seed);
        CardFloat table = CardFloat.of(plan, "CARD", 0.02, seed, 40);

        for (int i = 1; i < table.rows().size(); i++) {
            CardFloat.Row fewer = table.rows().get(i - 1);
            CardFloat.Row more = table.rows().get(i);
            assertThat(more.cards()).isEqualTo(fewer.cards() + 1);
            assertThat(more.someCameraWaits().value())
                    .as("seed %d, %d cards", seed, more.cards())
                    .isLessThanOrEqualTo(fewer.someCameraWaits().value());
            assertThat(more.waitingMinutes().value())
                    .as("seed %d, %d cards", seed, more.cards())
                    .isLessThanOrEqualTo(fewer.waitingMinutes().value());
        }
        assertThat(table.rows().get(table.rows().size() - 1).someCameraWaits().value())
                .as("seed %d", seed)
                .isLessThanOrEqualTo(0.02);
    }

    @RepeatedTest(20)
    void enoughIsEnoughOnAMeanDayAndOneFewerIsNot(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        DayPlan plan = RandomDay.of(seed);
        int enough = CardFloat.of(plan, "CARD", 1, seed, 2).enough();
        assertThat(waitingMillis(plan, enough)).as("seed %d", seed).isZero();
        assertThat(waitingMillis(plan, enough - 1)).as("seed %d", seed).isPositive();
    }

    private static long waitingMillis(DayPlan plan, int cards) {
        DayPlan with = plan.withCards(List.of(plan.cards().get(0).withCards(cards)));
        return Simulation.summary(with, Draws.MEANS).waitingMillis();
    }
}
