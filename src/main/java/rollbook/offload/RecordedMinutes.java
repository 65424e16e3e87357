package rollbook.offload;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Minutes as people write them: 31, 31.5, 31,5 or minutes and seconds, 31:30. */
final class RecordedMinutes {
    private static final Pattern DECIMAL = Pattern.compile("\\d{1,5}([.,]\\d{1,4})?");
    private static final Pattern CLOCK = Pattern.compile("(\\d{1,5}):([0-5]\\d)");
    private static final BigDecimal SECONDS_PER_MINUTE = BigDecimal.valueOf(60);
    private static final int SCALE = 2;

    private RecordedMinutes() {}

    /** Minutes to a hundredth, halves rounded up; empty if the text is neither form. */
    static Optional<BigDecimal> parse(String text) {
        String plain = text.strip();
        if (DECIMAL.matcher(plain).matches()) {
            return Optional.of(new BigDecimal(plain.replace(',', '.')).setScale(SCALE, RoundingMode.HALF_UP));
        }
        Matcher clock = CLOCK.matcher(plain);
        if (!clock.matches()) {
            return Optional.empty();
        }
        BigDecimal seconds =
                new BigDecimal(clock.group(1)).multiply(SECONDS_PER_MINUTE).add(new BigDecimal(clock.group(2)));
        return Optional.of(seconds.divide(SECONDS_PER_MINUTE, SCALE, RoundingMode.HALF_UP));
    }

    /** 31.5 rather than 31.50, for a form to start from. */
    static String format(BigDecimal minutes) {
        BigDecimal plain = minutes.stripTrailingZeros();
        return plain.setScale(Math.max(0, plain.scale()), RoundingMode.UNNECESSARY)
                .toPlainString();
    }
}
