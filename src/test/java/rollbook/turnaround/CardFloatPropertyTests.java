package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;

/** On days drawn from a seed, which is the repetition; for each kind of card. */
class CardFloatPropertyTests {
    private static final double HARDLY_EVER = 0.02;

    @RepeatedTest(30)
    void withMoreCardsTheChanceAndTheWaitingFall(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        DayPlan plan = RandomDay.of(seed);
        for (CardStock stock : plan.cards()) {
            List<CardFloat.Row> rows =
                    CardFloat.of(plan, stock.cardType(), HARDLY_EVER, seed, 20).rows();
            for (int i = 1; i < rows.size(); i++) {
                CardFloat.Row fewer = rows.get(i - 1);
                CardFloat.Row more = rows.get(i);
                assertThat(more.cards()).isEqualTo(fewer.cards() + 1);
                assertThat(more.someCameraWaits().value())
                        .as("seed %d, %s, %d cards", seed, stock.cardType(), more.cards())
                        .isLessThanOrEqualTo(fewer.someCameraWaits().value());
                assertThat(more.waitingMinutes().value())
                        .as("seed %d, %s, %d cards", seed, stock.cardType(), more.cards())
                        .isLessThanOrEqualTo(fewer.waitingMinutes().value());
            }
        }
    }

    /** A day on which a camera waited with fewer cards counts as one of these only until a float is found that is enough. */
    @RepeatedTest(10)
    void aFloatThatWasEnoughForADayStaysEnough(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        DayPlan plan = RandomDay.of(seed);
        for (CardStock stock : plan.cards()) {
            for (CardFloat.Row row :
                    CardFloat.of(plan, stock.cardType(), HARDLY_EVER, seed, 20).rows()) {
                int waits = 0;
                for (int day = 0; day < 20; day++) {
                    waits += waitingMillis(plan, stock.cardType(), row.cards(), Draws.of(seed, day)) > 0 ? 1 : 0;
                }
                assertThat(waits / 20.0)
                        .as("seed %d, %s, %d cards", seed, stock.cardType(), row.cards())
                        .isEqualTo(row.someCameraWaits().value());
            }
        }
    }

    @RepeatedTest(30)
    void enoughIsEnoughOnAMeanDayAndOneFewerIsNot(RepetitionInfo repetition) {
        long seed = repetition.getCurrentRepetition();
        DayPlan plan = RandomDay.of(seed);
        for (CardStock stock : plan.cards()) {
            int enough = CardFloat.of(plan, stock.cardType(), 1, seed, 2).enough();
            assertThat(waitingMillis(plan, stock.cardType(), enough, Draws.MEANS))
                    .as("seed %d, %s", seed, stock.cardType())
                    .isZero();
            if (enough > 0) {
                assertThat(waitingMillis(plan, stock.cardType(), enough - 1, Draws.MEANS))
                        .as("seed %d, %s", seed, stock.cardType())
                        .isPositive();
            }
        }
    }

    private static long waitingMillis(DayPlan plan, String cardType, int cards, Draws draws) {
        DayPlan with = plan.withCards(plan.cards().stream()
                .map(stock -> stock.withCards(stock.cardType().equals(cardType) ? cards : 2_000))
                .toList());
        return Simulation.summary(with, draws).waitingMillis();
    }
}
