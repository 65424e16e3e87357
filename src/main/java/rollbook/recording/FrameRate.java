package rollbook.recording;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import rollbook.quantity.Fraction;

/**
 * Frames per second, exact: 23.976 is a spoken short form of 24000/1001 and is never what is stored.
 *
 * <p>24 against 24000/1001 is 86.3 frames in an hour; the short form itself would drift by a millionth.
 */
public record FrameRate(Fraction framesPerSecond) implements Comparable<FrameRate> {

    private static final String FIELD = "frameRate";
    private static final Fraction FASTEST = Fraction.of(100_000);
    private static final int TEXT_DECIMALS = 3;

    public FrameRate {
        if (framesPerSecond.isZero() || framesPerSecond.compareTo(FASTEST) > 0) {
            throw new InvalidFormat(FIELD, "recording.invalid.frame-rate-range", FASTEST.numerator());
        }
    }

    public static FrameRate of(long framesPerSecond) {
        return new FrameRate(Fraction.of(framesPerSecond));
    }

    public static FrameRate of(long frames, long seconds) {
        return new FrameRate(Fraction.of(frames, seconds));
    }

    /**
     * Reads {@code 24}, {@code 24000/1001}, {@code 12.5} and the short forms {@code 23.976}, {@code 23.98}, {@code 29.97},
     * {@code 59.94} and their multiples. A decimal counts as a short form of N × 1000/1001 when it is that value rounded or cut
     * to its own two or more decimals, and N is a multiple of 12 or 15; any other decimal is taken as it stands.
     *
     * @throws InvalidFormat if the text is none of these
     */
    public static FrameRate parse(String text) {
        String plain = text.strip();
        try {
            Fraction asWritten = Fraction.parse(plain);
            return plain.contains(".") ? ofDecimal(new BigDecimal(plain)) : new FrameRate(asWritten);
        } catch (NumberFormatException e) {
            throw new InvalidFormat(FIELD, "recording.invalid.frame-rate");
        }
    }

    private static FrameRate ofDecimal(BigDecimal decimal) {
        long nominal = decimal.setScale(0, RoundingMode.CEILING)
                .min(new BigDecimal(FASTEST.numerator()))
                .longValue();
        boolean common = nominal > 0 && (nominal % 12 == 0 || nominal % 15 == 0);
        if (common && decimal.scale() >= 2) {
            Fraction slowed = Fraction.of(nominal * 1000, 1001);
            boolean shortForm = decimal.compareTo(slowed.toBigDecimal(decimal.scale(), RoundingMode.HALF_UP)) == 0
                    || decimal.compareTo(slowed.toBigDecimal(decimal.scale(), RoundingMode.DOWN)) == 0;
            if (shortForm) {
                return new FrameRate(slowed);
            }
        }
        return new FrameRate(Fraction.of(decimal));
    }

    public BigInteger numerator() {
        return framesPerSecond.numerator();
    }

    public BigInteger denominator() {
        return framesPerSecond.denominator();
    }

    public Fraction framesIn(Fraction seconds) {
        return framesPerSecond.times(seconds);
    }

    public Fraction secondsFor(long frames) {
        return Fraction.of(frames).dividedBy(framesPerSecond);
    }

    /** As crews write it: {@code 25}, {@code 23.976}, {@code 12.5}; the fraction itself when no such form reads back. */
    public String text() {
        String decimal = framesPerSecond
                .toBigDecimal(TEXT_DECIMALS, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
        boolean readsBack = !decimal.equals("0") && parse(decimal).equals(this);
        return readsBack ? decimal : exactText();
    }

    /** {@code 24000/1001}, or {@code 25} when it is whole. */
    public String exactText() {
        return framesPerSecond.toString();
    }

    @Override
    public int compareTo(FrameRate other) {
        return framesPerSecond.compareTo(other.framesPerSecond);
    }
}
