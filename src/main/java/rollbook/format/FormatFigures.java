package rollbook.format;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.ByteCount;
import rollbook.quantity.DataRate;
import rollbook.quantity.Fraction;
import rollbook.recording.RecordingFormat;

/**
 * What a format makes of seconds, minutes and cards, rounded for the page and nowhere before.
 *
 * @param minutesPerCard for each card size in its order, rounded down: a card never holds more than is said
 */
record FormatFigures(
        @Nullable UUID id,
        String name,
        String picture,
        String frameRate,
        String megabytesPerSecond,
        String megabitsPerSecond,
        String gigabytesPerMinute,
        String gigabytesPerHour,
        List<String> minutesPerCard) {

    private static final int RATE_DECIMALS = 2;
    /** A sound roll fills less than a gigabyte in a minute. */
    private static final int SMALL_DECIMALS = 4;

    private static final int MINUTE_DECIMALS = 1;

    static FormatFigures of(@Nullable UUID id, RecordingFormat format, List<CardSize> sizes) {
        DataRate rate = format.dataRate();
        return new FormatFigures(
                id,
                format.name(),
                format.size().isNone() ? "" : format.size().text(),
                format.frameRate().text(),
                rounded(rate.megabytesPerSecond()),
                rounded(rate.megabitsPerSecond()),
                rounded(rate.gigabytesPerMinute()),
                rounded(rate.gigabytesPerHour()),
                sizes.stream().map(size -> minutes(format, size)).toList());
    }

    static String minutes(RecordingFormat format, CardSize size) {
        BigDecimal minutes =
                format.minutesOn(ByteCount.of(size.capacityBytes())).toBigDecimal(MINUTE_DECIMALS, RoundingMode.DOWN);
        return String.format(Locale.UK, "%,.1f", minutes);
    }

    private static String rounded(Fraction fraction) {
        int decimals = fraction.compareTo(Fraction.ONE) < 0 ? SMALL_DECIMALS : RATE_DECIMALS;
        return String.format(Locale.UK, "%,." + decimals + "f", fraction.toBigDecimal(decimals, RoundingMode.HALF_UP));
    }
}
