package rollbook.quantity;

import java.math.BigInteger;
import java.time.Duration;

/**
 * Bytes per second, exact.
 *
 * <p>Units are decimal: 1 Mb/s is 10<sup>6</sup> bits, 1 MB/s 10<sup>6</sup> bytes in a second.
 */
public record DataRate(Fraction bytesPerSecond) implements Comparable<DataRate> {

    public static final DataRate ZERO = new DataRate(Fraction.ZERO);

    private static final int BITS_PER_BYTE = 8;
    private static final int SECONDS_PER_MINUTE = 60;
    private static final int SECONDS_PER_HOUR = 3600;
    private static final BigInteger NANOS_PER_SECOND = BigInteger.valueOf(1_000_000_000L);

    public static DataRate ofBytesPerSecond(long bytesPerSecond) {
        return new DataRate(Fraction.of(bytesPerSecond));
    }

    public static DataRate ofBitsPerSecond(Fraction bitsPerSecond) {
        return new DataRate(bitsPerSecond.dividedBy(BITS_PER_BYTE));
    }

    /** The rate that writes the bytes in the time; {@link ArithmeticException} if the time is zero. */
    public static DataRate of(ByteCount bytes, Duration duration) {
        return new DataRate(bytes.exact().dividedBy(Fraction.seconds(duration)));
    }

    public DataRate plus(DataRate other) {
        return new DataRate(bytesPerSecond.plus(other.bytesPerSecond));
    }

    public DataRate times(Fraction factor) {
        return new DataRate(bytesPerSecond.times(factor));
    }

    /**
     * How many times as fast this is as the other.
     *
     * @throws ArithmeticException if the other is zero
     */
    public Fraction ratioTo(DataRate other) {
        return bytesPerSecond.dividedBy(other.bytesPerSecond);
    }

    /** Exact bytes in exact seconds; may be a part of a byte. */
    public Fraction bytesIn(Fraction seconds) {
        return bytesPerSecond.times(seconds);
    }

    /** Bytes in a time, a part of a byte counted as a whole one, so that a plan never asks for too little. */
    public ByteCount bytesIn(Duration duration) {
        return ByteCount.roundedUp(bytesIn(Fraction.seconds(duration)));
    }

    /**
     * Exact seconds that the bytes take at this rate.
     *
     * @throws ArithmeticException if the rate is zero
     */
    public Fraction secondsFor(ByteCount bytes) {
        return bytes.exact().dividedBy(bytesPerSecond);
    }

    /**
     * The time that the bytes take at this rate, rounded up to the next nanosecond.
     *
     * @throws ArithmeticException if the rate is zero or the time longer than {@link Duration} can hold
     */
    public Duration timeFor(ByteCount bytes) {
        BigInteger nanos =
                secondsFor(bytes).times(Fraction.of(NANOS_PER_SECOND)).ceiling();
        BigInteger[] parts = nanos.divideAndRemainder(NANOS_PER_SECOND);
        return Duration.ofSeconds(parts[0].longValueExact(), parts[1].longValueExact());
    }

    public Fraction bitsPerSecond() {
        return bytesPerSecond.times(BITS_PER_BYTE);
    }

    public Fraction megabitsPerSecond() {
        return bitsPerSecond().dividedBy(ByteUnit.MB.bytes());
    }

    public Fraction megabytesPerSecond() {
        return perSecond(ByteUnit.MB);
    }

    public Fraction gigabytesPerMinute() {
        return perMinute(ByteUnit.GB);
    }

    public Fraction gigabytesPerHour() {
        return perHour(ByteUnit.GB);
    }

    public Fraction perSecond(ByteUnit unit) {
        return bytesPerSecond.dividedBy(unit.bytes());
    }

    public Fraction perMinute(ByteUnit unit) {
        return perSecond(unit).times(SECONDS_PER_MINUTE);
    }

    public Fraction perHour(ByteUnit unit) {
        return perSecond(unit).times(SECONDS_PER_HOUR);
    }

    public boolean isZero() {
        return bytesPerSecond.isZero();
    }

    @Override
    public int compareTo(DataRate other) {
        return bytesPerSecond.compareTo(other.bytesPerSecond);
    }
}
