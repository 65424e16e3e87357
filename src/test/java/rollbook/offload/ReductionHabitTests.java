package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.UUID;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/** Worked by hand. That three scaled deviations and a twentieth are the limits is common practice, no source. */
class ReductionHabitTests {
    @Test
    void fourRollsAreNoHabit() {
        assertThat(ReductionHabit.of(thousandths(600, 600, 600, 600))).isEmpty();
    }

    @Test
    void rollsThatAreAllAlikeAllowATwentiethMoreOrLess() {
        ReductionHabit habit = habit(600, 600, 600, 600, 600);

        assertThat(habit.median()).isEqualByComparingTo("0.6");
        assertThat(habit.tolerance()).isEqualByComparingTo("0.03");
        assertThat(habit.isFarFrom(roll(630))).isFalse();
        assertThat(habit.isFarFrom(roll(631))).isTrue();
        assertThat(habit.isFarFrom(roll(569))).isTrue();
        assertThat(habit.isFarFrom(roll(1_000))).as("nothing was saved").isTrue();
    }

    /** Deviations from 0.60: 0, 0.02, 0.02, 0.04, 0.05; their median 0.02, so 3 × 1.4826 × 0.02 = 0.088956. */
    @Test
    void rollsThatDifferAllowMore() {
        ReductionHabit habit = habit(560, 580, 600, 620, 650);

        assertThat(habit.tolerance()).isEqualByComparingTo("0.088956");
        assertThat(habit.isFarFrom(roll(688))).isFalse();
        assertThat(habit.isFarFrom(roll(689))).isTrue();
        assertThat(habit.isFarFrom(roll(511))).isTrue();
    }

    @Test
    void anEvenNumberOfRollsHasItsMedianInTheMiddle() {
        assertThat(habit(500, 500, 500, 600, 600, 600).median()).isEqualByComparingTo("0.55");
    }

    /** What the median is for: less than half of the rolls, however odd, can't carry the habit off. */
    @Test
    void aFewOddRollsDoNotBecomeTheHabit() {
        long seed = 611;
        Random random = new Random(seed);
        for (int run = 0; run < 500; run++) {
            List<Encoding> rolls = new ArrayList<>();
            int usual = 5 + random.nextInt(20);
            for (int i = 0; i < usual; i++) {
                rolls.add(roll(590 + random.nextInt(21)));
            }
            int odd = random.nextInt((usual - 1) / 2);
            for (int i = 0; i < odd; i++) {
                rolls.add(roll(random.nextBoolean() ? 1 + random.nextInt(100) : 900 + random.nextInt(5_000)));
            }
            Collections.shuffle(rolls, random);
            ReductionHabit habit = ReductionHabit.of(rolls).orElseThrow();
            assertThat(habit.median())
                    .as("seed %d, run %d", seed, run)
                    .isBetween(new BigDecimal("0.590"), new BigDecimal("0.610"));
        }
    }

    private static ReductionHabit habit(long... thousandths) {
        return ReductionHabit.of(thousandths(thousandths)).orElseThrow();
    }

    private static List<Encoding> thousandths(long... thousandths) {
        return LongStream.of(thousandths).mapToObj(ReductionHabitTests::roll).toList();
    }

    private static Encoding roll(long thousandths) {
        return new Encoding(new UUID(0, thousandths), thousandths, 1_000);
    }
}
