package rollbook.inventory;

import java.math.BigDecimal;

/** The decimal units in which people write sizes and speeds: a TB is 10¹² bytes, as media are sold. */
enum DecimalUnit {
    MEGABYTES(6),
    GIGABYTES(9),
    TERABYTES(12);

    private final int power;

    DecimalUnit(int power) {
        this.power = power;
    }

    /** @throws ArithmeticException if that isn't a whole number of bytes, or more than a long holds */
    long toBytes(BigDecimal amount) {
        return amount.movePointRight(power).longValueExact();
    }

    /** Exactly as many of this unit, without trailing zeros: 960, 0.5. */
    String write(long bytes) {
        return BigDecimal.valueOf(bytes)
                .movePointLeft(power)
                .stripTrailingZeros()
                .toPlainString();
    }
}
