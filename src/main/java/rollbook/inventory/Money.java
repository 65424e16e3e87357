package rollbook.inventory;

import java.math.BigDecimal;
import java.util.Currency;

/** Amounts of a currency, written with its decimals and kept in its smallest unit. */
record Money(Currency currency) {
    static Money of(String currencyCode) {
        return new Money(Currency.getInstance(currencyCode));
    }

    /** Decimals of the currency: 2 for EUR, 0 for JPY, 3 for KWD. */
    int digits() {
        return Math.max(0, currency.getDefaultFractionDigits());
    }

    /** @throws ArithmeticException if the amount has more decimals than the currency, or is too large for a long */
    long toMinorUnits(BigDecimal amount) {
        return amount.movePointRight(digits()).longValueExact();
    }

    String write(long minorUnits) {
        return BigDecimal.valueOf(minorUnits, digits()).toPlainString();
    }
}
