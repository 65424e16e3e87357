package rollbook.cost;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import org.jspecify.annotations.Nullable;

/**
 * What costs are divided by: so much was recorded on so many shooting days.
 *
 * @param bytes as recorded, each roll once, however many copies were made
 */
record Scope(BigInteger bytes, int shootingDays) {
    private static final BigDecimal BYTES_PER_TERABYTE = BigDecimal.TEN.pow(12);

    /** Rounded to the smallest unit, halves up; null while nothing was recorded. */
    @Nullable
    Long perTerabyteMinorUnits(long minorUnits) {
        return bytes.signum() == 0
                ? null
                : BigDecimal.valueOf(minorUnits)
                        .multiply(BYTES_PER_TERABYTE)
                        .divide(new BigDecimal(bytes), 0, RoundingMode.HALF_UP)
                        .longValueExact();
    }

    /** Rounded to the smallest unit, halves up; null without a shooting day. */
    @Nullable
    Long perDayMinorUnits(long minorUnits) {
        return shootingDays == 0
                ? null
                : BigDecimal.valueOf(minorUnits)
                        .divide(BigDecimal.valueOf(shootingDays), 0, RoundingMode.HALF_UP)
                        .longValueExact();
    }
}
