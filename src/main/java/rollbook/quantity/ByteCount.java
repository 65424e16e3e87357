package rollbook.quantity;

import java.math.BigDecimal;
import java.math.BigInteger;

/**
 * A number of bytes, from zero to 2<sup>63</sup> − 1 (about 9.2 EB).
 *
 * <p>Arithmetic is exact: a result outside that range throws {@link ArithmeticException} and never wraps around.
 */
public record ByteCount(long bytes) implements Comparable<ByteCount> {

    public static final ByteCount ZERO = new ByteCount(0);

    public ByteCount {
        if (bytes < 0) {
            throw new IllegalArgumentException("bytes must not be negative: " + bytes);
        }
    }

    public static ByteCount of(long bytes) {
        return new ByteCount(bytes);
    }

    /** For a {@code bigint} column: Spring's object conversion takes only a method of the very class that the driver gives. */
    public static ByteCount valueOf(Long bytes) {
        return new ByteCount(bytes);
    }

    /** For a {@code sum} over {@code bigint}, which PostgreSQL answers as {@code numeric}; a fraction is refused. */
    public static ByteCount valueOf(BigDecimal bytes) {
        return new ByteCount(bytes.longValueExact());
    }

    /** A whole number of a unit, such as 960 GB. */
    public static ByteCount of(long amount, ByteUnit unit) {
        return new ByteCount(Math.multiplyExact(amount, unit.bytes()));
    }

    /** Bytes of an exact amount, a part of a byte counted as a whole one. */
    public static ByteCount roundedUp(Fraction bytes) {
        return of(bytes.ceiling());
    }

    /** The whole bytes of an exact amount, a part of a byte left out. */
    public static ByteCount roundedDown(Fraction bytes) {
        return of(bytes.floor());
    }

    private static ByteCount of(BigInteger bytes) {
        return new ByteCount(bytes.longValueExact());
    }

    public ByteCount plus(ByteCount other) {
        return new ByteCount(Math.addExact(bytes, other.bytes));
    }

    /** @throws ArithmeticException if the other is larger */
    public ByteCount minus(ByteCount other) {
        if (other.bytes > bytes) {
            throw new ArithmeticException(bytes + " bytes less " + other.bytes + " would be negative");
        }
        return new ByteCount(bytes - other.bytes);
    }

    public ByteCount times(long factor) {
        return new ByteCount(Math.multiplyExact(bytes, factor));
    }

    /** This many times a fraction (0.6 of a card, 1.005 with overhead), a part of a byte counted as a whole one. */
    public ByteCount times(Fraction factor) {
        return roundedUp(exact().times(factor));
    }

    /**
     * How many times the other goes into this, exactly.
     *
     * @throws ArithmeticException if the other is zero
     */
    public Fraction ratioTo(ByteCount other) {
        return exact().dividedBy(other.exact());
    }

    public Fraction in(ByteUnit unit) {
        return Fraction.of(bytes, unit.bytes());
    }

    public Fraction exact() {
        return Fraction.of(bytes);
    }

    public boolean isZero() {
        return bytes == 0;
    }

    public boolean isMoreThan(ByteCount other) {
        return bytes > other.bytes;
    }

    public boolean isAtLeast(ByteCount other) {
        return bytes >= other.bytes;
    }

    @Override
    public int compareTo(ByteCount other) {
        return Long.compare(bytes, other.bytes);
    }
}
