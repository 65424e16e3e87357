package rollbook.ordering;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PackNeedTests {
    private static final int STRATA = 20_000;

    private static PackNeed need(DoubleUnaryOperator inverse) {
        PackNeed need = new PackNeed();
        for (int i = 0; i < STRATA; i++) {
            need.add((long) Math.ceil(Math.max(0, inverse.applyAsDouble((i + 0.5) / STRATA))), 1.0 / STRATA);
        }
        return need;
    }

    // The newsvendor's quantity is the one that is too little with the chance of over / (over + under). Demand of 50
    // and 8:
    // 56.60 (Snyder and Shen, Fundamentals of Supply Chain Theory 2e, example 4.3, quoted in the tests of stockpyl);
    // exponential demand of 10,000: 11,856 (Hillier and Lieberman, section 19.6, quoted in a public test).
    @Test
    void theFewestPacksWithinARiskAreTheNewsvendors() {
        assertThat(need(chance -> 50 + 8 * Textbook.z(chance)).fewestWithin(0.18 / 0.88))
                .isEqualTo(57);
        assertThat(need(chance -> -10_000 * Math.log(1 - chance)).fewestWithin(11 / 36.0))
                .isBetween(11_854L, 11_859L);
    }

    // Needed are 1, 2 or 3 packs with chances of 0.5, 0.3 and 0.2.
    @ParameterizedTest
    @CsvSource({"0.6, 1", "0.5, 1", "0.49, 2", "0.2, 2", "0.19, 3", "0, 3"})
    void countsChancesToTheEdge(double risk, long packs) {
        PackNeed need = new PackNeed();
        need.add(3, 0.2);
        need.add(1, 0.5);
        need.add(2, 0.3);

        assertThat(need.fewestWithin(risk)).isEqualTo(packs);
    }

    /** Against trying all numbers: what is left over costs its price, each pack that lacks a delivery. */
    @Test
    void whatIsWorthItsPriceIsTheCheapestOfAllNumbers() {
        for (long seed = 1; seed <= 200; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            long[] needed = new long[20];
            PackNeed need = new PackNeed();
            for (int i = 0; i < needed.length; i++) {
                needed[i] = random.nextLong(random.nextInt(1, 30));
                need.add(needed[i], 1.0 / needed.length);
            }
            long price = random.nextLong(0, 100);
            long delivery = random.nextLong(0, 500);

            long best = need.worthTheirPrice(price, delivery);

            for (long other = 0; other <= 35; other++) {
                assertThat(cost(needed, best, price, delivery))
                        .as("seed %d, %d packs", seed, other)
                        .isLessThanOrEqualTo(cost(needed, other, price, delivery) + 1e-6);
            }
        }
    }

    private static double cost(long[] needed, long packs, long price, long delivery) {
        double cost = 0;
        for (long need : needed) {
            cost += need > packs ? delivery * (need - packs) : price * (packs - need);
        }
        return cost;
    }
}
