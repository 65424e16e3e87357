package rollbook.inventory;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/**
 * Codes that count up: CARD-001 to CARD-024 is {@code new NumberRun("CARD-", 1, 3, 24)}.
 *
 * @param digits how many digits each number has, filled up with zeros
 */
public record NumberRun(String prefix, int first, int digits, int count) {
    public static final int MOST = 500;
    public static final int MOST_DIGITS = 6;

    /** @throws IllegalArgumentException if the last number needs more digits, or the run is empty or too long */
    public NumberRun {
        if (first < 0 || count < 1 || count > MOST || digits < 1 || digits > MOST_DIGITS) {
            throw new IllegalArgumentException("%d numbers of %d digits from %d".formatted(count, digits, first));
        }
        if (digitsOf(first + count - 1L) > digits) {
            throw new IllegalArgumentException("%d needs more than %d digits".formatted(first + count - 1L, digits));
        }
    }

    public List<String> codes() {
        return IntStream.range(first, first + count)
                .mapToObj(number -> prefix + String.format(Locale.ROOT, "%0" + digits + "d", number))
                .toList();
    }

    static int digitsOf(long number) {
        return Long.toString(number).length();
    }
}
