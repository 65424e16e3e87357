package rollbook.web;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;

/** Amounts in three significant figures, as the trade sells them (powers of 1000) and as computers show them (1024). */
final class Figures {
    private static final MathContext THREE_FIGURES = new MathContext(3, RoundingMode.HALF_UP);
    private static final BigDecimal THOUSAND = BigDecimal.valueOf(1000);
    private static final BigDecimal KIBI = BigDecimal.valueOf(1024);
    private static final List<String> DECIMAL = List.of("B", "kB", "MB", "GB", "TB", "PB", "EB", "ZB");
    private static final List<String> BINARY = List.of("B", "KiB", "MiB", "GiB", "TiB", "PiB", "EiB", "ZiB");

    private Figures() {}

    static String decimal(BigDecimal bytes) {
        return scaled(bytes, THOUSAND, DECIMAL);
    }

    static String binary(BigDecimal bytes) {
        return scaled(bytes, KIBI, BINARY);
    }

    /** {@code value} in its own unit with three significant figures, whole part in groups: 0.00412, 4.12, 412, 41,200. */
    static String threeFigures(BigDecimal value) {
        BigDecimal rounded = value.round(THREE_FIGURES);
        if (rounded.signum() == 0) {
            return "0";
        }
        int decimals = Math.max(0, 2 - (rounded.precision() - rounded.scale() - 1));
        return String.format(Locale.UK, "%,." + decimals + "f", rounded);
    }

    private static String scaled(BigDecimal bytes, BigDecimal step, List<String> units) {
        BigDecimal value = bytes;
        int unit = 0;
        // Rounding first, so that 999.6 GB becomes 1.00 TB and not 1,000 GB.
        while (value.abs()
                                .round(THREE_FIGURES)
                                .max(value.abs().setScale(0, RoundingMode.HALF_UP))
                                .compareTo(step)
                        >= 0
                && unit < units.size() - 1) {
            value = value.divide(step, MathContext.DECIMAL64);
            unit++;
        }
        String figure = unit == 0
                ? String.format(
                        Locale.UK,
                        "%,d",
                        value.setScale(0, RoundingMode.HALF_UP).toBigInteger())
                : threeFigures(value);
        return figure + " " + units.get(unit);
    }
}
