package rollbook.manifest;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A set of whole numbers from 0 upwards, kept as runs of numbers that follow each other. Numbers may come in any order
 * and more than once. Room grows with the runs and not with the numbers.
 */
final class NumberRuns {
    private static final int LOW = 32;

    /** Each run as its first number in the upper half and its last one in the lower; sorted up to {@code tidy} only. */
    private long[] runs = new long[1];

    private int used;
    private boolean tidy = true;

    void add(int number) {
        if (used > 0) {
            int first = first(runs[used - 1]);
            int last = last(runs[used - 1]);
            if (number >= first && number <= last) {
                return;
            }
            if (number - 1 == last) {
                runs[used - 1] = run(first, number);
                return;
            }
        }
        append(run(number, number));
    }

    void addAll(NumberRuns others) {
        for (int i = 0; i < others.used; i++) {
            append(others.runs[i]);
        }
    }

    private void append(long run) {
        if (used == runs.length) {
            tidyUp();
            if (used > runs.length / 2) {
                runs = Arrays.copyOf(runs, runs.length * 2);
            }
        }
        tidy &= used == 0 || first(run) - 1 > last(runs[used - 1]);
        runs[used++] = run;
    }

    /** How many numbers there are, each counted once. */
    long size() {
        tidyUp();
        long size = 0;
        for (int i = 0; i < used; i++) {
            size += last(runs[i]) - (long) first(runs[i]) + 1;
        }
        return size;
    }

    /** How many runs there are. */
    int runs() {
        tidyUp();
        return used;
    }

    /** The runs in order. */
    List<NumberRange> ranges() {
        tidyUp();
        List<NumberRange> ranges = new ArrayList<>(used);
        for (int i = 0; i < used; i++) {
            ranges.add(new NumberRange(first(runs[i]), last(runs[i])));
        }
        return ranges;
    }

    /** What is left out between the smallest number and the largest. */
    List<NumberRange> gaps() {
        tidyUp();
        List<NumberRange> gaps = new ArrayList<>();
        for (int i = 1; i < used; i++) {
            gaps.add(new NumberRange(last(runs[i - 1]) + 1, first(runs[i]) - 1));
        }
        return gaps;
    }

    /** The numbers that both sets hold. */
    List<NumberRange> common(NumberRuns other) {
        tidyUp();
        other.tidyUp();
        List<NumberRange> common = new ArrayList<>();
        for (int i = 0, j = 0; i < used && j < other.used; ) {
            int first = Math.max(first(runs[i]), first(other.runs[j]));
            int last = Math.min(last(runs[i]), last(other.runs[j]));
            if (first <= last) {
                common.add(new NumberRange(first, last));
            }
            if (last(runs[i]) < last(other.runs[j])) {
                i++;
            } else {
                j++;
            }
        }
        return common;
    }

    private void tidyUp() {
        if (tidy || used == 0) {
            return;
        }
        Arrays.sort(runs, 0, used);
        int kept = 0;
        for (int i = 1; i < used; i++) {
            if (first(runs[i]) - 1 <= last(runs[kept])) {
                runs[kept] = run(first(runs[kept]), Math.max(last(runs[kept]), last(runs[i])));
            } else {
                runs[++kept] = runs[i];
            }
        }
        used = kept + 1;
        tidy = true;
    }

    private static long run(int first, int last) {
        return (long) first << LOW | last;
    }

    private static int first(long run) {
        return (int) (run >>> LOW);
    }

    private static int last(long run) {
        return (int) run;
    }
}
