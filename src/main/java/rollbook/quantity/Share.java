package rollbook.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;

/**
 * An exact share of a number of bytes, such as 3/5 of the recorded bytes kept by an encoding, or 95/100 of an item's
 * capacity that may be filled. Results are whole bytes; the method's name says which way they are rounded.
 */
public record Share(long numerator, long denominator) {
    public static final Share WHOLE = new Share(1, 1);

    public Share {
        if (numerator <= 0 || denominator <= 0) {
            throw new IllegalArgumentException("Share %d/%d is not above zero".formatted(numerator, denominator));
        }
    }

    public static Share percent(int percent) {
        return new Share(percent, 100);
    }

    /** To 16 significant figures, for display. */
    public BigDecimal value() {
        return BigDecimal.valueOf(numerator).divide(BigDecimal.valueOf(denominator), MathContext.DECIMAL64);
    }

    /** For demand: a byte too many is safer than a byte too few. */
    public long ceilOf(long bytes) {
        return ExactDivision.ceil(
                BigInteger.valueOf(bytes).multiply(BigInteger.valueOf(numerator)), BigInteger.valueOf(denominator));
    }

    /** For room: a byte too few is safer than a byte too many. */
    public long floorOf(long bytes) {
        return BigInteger.valueOf(bytes)
                .multiply(BigInteger.valueOf(numerator))
                .divide(BigInteger.valueOf(denominator))
                .longValueExact();
    }
}
