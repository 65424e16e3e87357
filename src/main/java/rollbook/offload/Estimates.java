package rollbook.offload;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** What bytes and rates say of each other. */
final class Estimates {
    private Estimates() {}

    /** When so many bytes have passed at that rate without a pause, to the second; null if either is unknown. */
    static @Nullable Instant end(Instant start, @Nullable Long bytes, @Nullable Long bytesPerSecond) {
        if (bytes == null || bytesPerSecond == null || bytesPerSecond <= 0) {
            return null;
        }
        return start.plus(Duration.ofSeconds(-Math.floorDiv(-bytes, bytesPerSecond)));
    }

    /** (measured − expected) / expected: −0.18 is 18 % slower; null if either is unknown. */
    static @Nullable Double difference(@Nullable Long measured, @Nullable Long expected) {
        if (measured == null || expected == null || expected <= 0) {
            return null;
        }
        return BigDecimal.valueOf(measured)
                .subtract(BigDecimal.valueOf(expected))
                .divide(BigDecimal.valueOf(expected), MathContext.DECIMAL64)
                .doubleValue();
    }

    /** That percentage of the bytes, a part of a byte counted as a whole one; null if they are unknown. */
    static @Nullable Long percentOf(@Nullable Long bytes, int percent) {
        return bytes == null
                ? null
                : BigDecimal.valueOf(bytes)
                        .multiply(BigDecimal.valueOf(percent))
                        .movePointLeft(2)
                        .setScale(0, RoundingMode.CEILING)
                        .longValueExact();
    }
}
