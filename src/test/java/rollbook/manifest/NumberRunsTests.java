package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class NumberRunsTests {

    @Test
    void keepsANumberSetAsRunsAndKnowsItsGaps() {
        NumberRuns numbers = new NumberRuns();
        for (int number : new int[] {7, 1, 2, 3, 8, 2, 12, 9, Integer.MAX_VALUE}) {
            numbers.add(number);
        }
        assertThat(numbers.ranges()).hasToString("[1–3, 7–9, 12, 2147483647]");
        assertThat(numbers.gaps()).hasToString("[4–6, 10–11, 13–2147483646]");
        assertThat(numbers.size()).isEqualTo(8);
        assertThat(numbers.runs()).isEqualTo(4);
        assertThat(new NumberRuns().ranges()).isEmpty();
        assertThat(new NumberRuns().gaps()).isEmpty();
    }

    /** Property: whatever is added in whatever order, it holds exactly that; compared with the platform's sorted set. */
    @Test
    void holdsExactlyWhatWasAdded() {
        for (int round = 0; round < 500; round++) {
            long seed = System.nanoTime();
            Random random = new Random(seed);
            int bound = 1 + random.nextInt(300);
            NumberRuns numbers = new NumberRuns();
            TreeSet<Integer> plain = new TreeSet<>();
            fill(numbers, plain, random, bound);
            NumberRuns others = new NumberRuns();
            TreeSet<Integer> plainOthers = new TreeSet<>();
            fill(others, plainOthers, random, bound);

            TreeSet<Integer> common = new TreeSet<>(plain);
            common.retainAll(plainOthers);
            assertThat(expanded(numbers.ranges())).as("seed %d", seed).containsExactlyElementsOf(plain);
            assertThat(expanded(numbers.common(others))).as("seed %d", seed).containsExactlyElementsOf(common);
            assertThat(numbers.size()).as("seed %d", seed).isEqualTo(plain.size());
            TreeSet<Integer> all = new TreeSet<>(expanded(numbers.ranges()));
            all.addAll(expanded(numbers.gaps()));
            assertThat(all).as("seed %d", seed).hasSize(plain.last() - plain.first() + 1);
            numbers.addAll(others);
            plain.addAll(plainOthers);
            assertThat(expanded(numbers.ranges())).as("seed %d", seed).containsExactlyElementsOf(plain);
        }
    }

    private static void fill(NumberRuns numbers, TreeSet<Integer> plain, Random random, int bound) {
        int times = 1 + random.nextInt(200);
        for (int i = 0; i < times; i++) {
            int start = random.nextInt(bound);
            int length = random.nextInt(10);
            for (int number = start; number <= start + length; number++) {
                numbers.add(number);
                plain.add(number);
            }
        }
    }

    private static List<Integer> expanded(List<NumberRange> ranges) {
        List<Integer> all = new ArrayList<>();
        ranges.forEach(range -> {
            for (int number = range.first(); number <= range.last(); number++) {
                all.add(number);
            }
        });
        return all;
    }
}
