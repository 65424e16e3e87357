package rollbook.quantity;

import java.math.BigInteger;

/** Division of numbers at or above zero that rounds up, and fails with ArithmeticException instead of wrapping. */
public final class ExactDivision {
    private ExactDivision() {}

    public static long ceil(BigInteger dividend, BigInteger divisor) {
        return dividend.add(divisor).subtract(BigInteger.ONE).divide(divisor).longValueExact();
    }

    public static long ceil(long dividend, long divisor) {
        return ceil(BigInteger.valueOf(dividend), BigInteger.valueOf(divisor));
    }
}
