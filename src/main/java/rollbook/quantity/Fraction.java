package rollbook.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Duration;
import java.util.regex.Pattern;

/**
 * An exact fraction, zero or more, kept in lowest terms, so that equal values are equal records.
 *
 * <p>Rates such as 24000/1001 frames a second have no finite decimal; sums over a whole show stay right only when they are
 * never rounded on the way.
 */
public record Fraction(BigInteger numerator, BigInteger denominator) implements Comparable<Fraction> {

    public static final Fraction ZERO = of(0);
    public static final Fraction ONE = of(1);

    private static final int LONGEST_SCALE = 100;

    /** The lengths are bounded because the text may come from a form. */
    private static final Pattern TEXT = Pattern.compile("\\d{1,40}(/\\d{1,40}|\\.\\d{1,40})?");

    public Fraction {
        if (denominator.signum() <= 0) {
            throw new IllegalArgumentException("denominator must be above zero: " + denominator);
        }
        if (numerator.signum() < 0) {
            throw new IllegalArgumentException("fraction must not be negative: " + numerator + "/" + denominator);
        }
        BigInteger common = numerator.gcd(denominator);
        numerator = numerator.divide(common);
        denominator = denominator.divide(common);
    }

    public static Fraction of(long whole) {
        return of(BigInteger.valueOf(whole));
    }

    public static Fraction of(BigInteger whole) {
        return new Fraction(whole, BigInteger.ONE);
    }

    public static Fraction of(long numerator, long denominator) {
        return new Fraction(BigInteger.valueOf(numerator), BigInteger.valueOf(denominator));
    }

    /** The decimal's exact value; at most 100 digits before or after the point. */
    public static Fraction of(BigDecimal decimal) {
        if (Math.abs((long) decimal.scale()) > LONGEST_SCALE || decimal.precision() > LONGEST_SCALE) {
            throw new IllegalArgumentException("decimal is too long");
        }
        return new Fraction(
                decimal.movePointRight(Math.max(0, decimal.scale())).toBigIntegerExact(),
                BigInteger.TEN.pow(Math.max(0, decimal.scale())));
    }

    /** A length of time in seconds, to the nanosecond that {@link Duration} holds. */
    public static Fraction seconds(Duration duration) {
        BigInteger nanosPerSecond = BigInteger.valueOf(1_000_000_000L);
        BigInteger nanos = BigInteger.valueOf(duration.getSeconds())
                .multiply(nanosPerSecond)
                .add(BigInteger.valueOf(duration.getNano()));
        return new Fraction(nanos, nanosPerSecond);
    }

    /**
     * Reads {@code 24}, {@code 0.005} or {@code 24000/1001}.
     *
     * @throws NumberFormatException if the text is none of these
     */
    public static Fraction parse(String text) {
        String plain = text.strip();
        if (!TEXT.matcher(plain).matches()) {
            throw new NumberFormatException("not a number or fraction");
        }
        int slash = plain.indexOf('/');
        if (slash < 0) {
            return of(new BigDecimal(plain));
        }
        BigInteger below = new BigInteger(plain.substring(slash + 1));
        if (below.signum() == 0) {
            throw new NumberFormatException("division by zero");
        }
        return new Fraction(new BigInteger(plain.substring(0, slash)), below);
    }

    public Fraction plus(Fraction other) {
        return new Fraction(
                numerator.multiply(other.denominator).add(other.numerator.multiply(denominator)),
                denominator.multiply(other.denominator));
    }

    /** @throws IllegalArgumentException if the difference would be negative */
    public Fraction minus(Fraction other) {
        return new Fraction(
                numerator.multiply(other.denominator).subtract(other.numerator.multiply(denominator)),
                denominator.multiply(other.denominator));
    }

    public Fraction times(Fraction other) {
        return new Fraction(numerator.multiply(other.numerator), denominator.multiply(other.denominator));
    }

    public Fraction times(long factor) {
        return times(of(factor));
    }

    /** @throws ArithmeticException if the divisor is zero */
    public Fraction dividedBy(Fraction divisor) {
        if (divisor.isZero()) {
            throw new ArithmeticException("division by zero");
        }
        return new Fraction(numerator.multiply(divisor.denominator), denominator.multiply(divisor.numerator));
    }

    public Fraction dividedBy(long divisor) {
        return dividedBy(of(divisor));
    }

    public boolean isZero() {
        return numerator.signum() == 0;
    }

    public boolean isWhole() {
        return denominator.equals(BigInteger.ONE);
    }

    /** The largest whole number not above this. */
    public BigInteger floor() {
        return numerator.divide(denominator);
    }

    /** The smallest whole number not below this. */
    public BigInteger ceiling() {
        BigInteger[] parts = numerator.divideAndRemainder(denominator);
        return parts[1].signum() == 0 ? parts[0] : parts[0].add(BigInteger.ONE);
    }

    /** A decimal for display, with the given digits after the point. */
    public BigDecimal toBigDecimal(int scale, RoundingMode rounding) {
        return new BigDecimal(numerator).divide(new BigDecimal(denominator), scale, rounding);
    }

    /** For charts and estimates only. */
    public double toDouble() {
        return new BigDecimal(numerator)
                .divide(new BigDecimal(denominator), new MathContext(24))
                .doubleValue();
    }

    @Override
    public int compareTo(Fraction other) {
        return numerator.multiply(other.denominator).compareTo(other.numerator.multiply(denominator));
    }

    /** {@code 25} for whole numbers, otherwise {@code 24000/1001}; {@link #parse} reads it back. */
    @Override
    public String toString() {
        return isWhole() ? numerator.toString() : numerator + "/" + denominator;
    }
}
