package rollbook.quantity;

import java.math.BigDecimal;
import java.util.Currency;

/** Amounts of a currency, written with its decimals and kept in its smallest unit: exact, never in floating point. */
public record Money(Currency currency) {
    public static Money of(String currencyCode) {
        return new Money(Currency.getInstance(currencyCode));
    }

    /** Decimals of the currency: 2 for EUR, 0 for JPY, 3 for KWD. */
    public int digits() {
        return Math.max(0, currency.getDefaultFractionDigits());
    }

    /** Whether the currency has parts that small. */
    public boolean canPay(BigDecimal amount) {
        return amount.stripTrailingZeros().scale() <= digits();
    }

    /** @throws ArithmeticException if the amount has more decimals than the currency, or is too large for a long */
    public long toMinorUnits(BigDecimal amount) {
        return amount.movePointRight(digits()).longValueExact();
    }

    public BigDecimal amount(long minorUnits) {
        return BigDecimal.valueOf(minorUnits, digits());
    }

    public String write(long minorUnits) {
        return amount(minorUnits).toPlainString();
    }
}
