package rollbook.offload;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rollbook.quantity.ByteUnit;

/**
 * An amount of bytes as people copy it from a screen: 512300000000, 512,300,000,000, 512.3 GB, 477.1 GiB. Units are
 * powers of 1000 (SI) or, with an i, of 1024 (IEC 80000-13). A comma before three digits separates groups.
 */
final class ReportedBytes {
    private static final Pattern AMOUNT = Pattern.compile(
            "(\\d{1,3}(?:[, \\u00A0\\u202F]\\d{3})+(?:\\.\\d{1,9})?|\\d{1,19}(?:[.,]\\d{1,9})?)\\s*(|B|[KMGTPE]I?B)");
    private static final Pattern GROUPED = Pattern.compile("\\d{1,3}(?:[, \\u00A0\\u202F]\\d{3})+(?:\\.\\d+)?");
    private static final BigDecimal MOST = BigDecimal.valueOf(Long.MAX_VALUE);

    private ReportedBytes() {}

    /** Whole bytes, halves rounded up; empty if the text is no such amount, is nothing, or passes 2^63 − 1 bytes. */
    static OptionalLong parse(String text) {
        Matcher amount = AMOUNT.matcher(text.strip().toUpperCase(Locale.ROOT).replaceFirst("\\s*BYTES$", " B"));
        if (!amount.matches()) {
            return OptionalLong.empty();
        }
        BigDecimal bytes = number(amount.group(1))
                .multiply(BigDecimal.valueOf(unit(amount.group(2)).bytes()))
                .setScale(0, RoundingMode.HALF_UP);
        boolean fits = bytes.signum() > 0 && bytes.compareTo(MOST) <= 0;
        return fits ? OptionalLong.of(bytes.longValueExact()) : OptionalLong.empty();
    }

    private static BigDecimal number(String digits) {
        return GROUPED.matcher(digits).matches()
                ? new BigDecimal(digits.replaceAll("[^\\d.]", ""))
                : new BigDecimal(digits.replace(',', '.'));
    }

    private static ByteUnit unit(String symbol) {
        return symbol.isEmpty() ? ByteUnit.B : ByteUnit.valueOf(symbol);
    }
}
