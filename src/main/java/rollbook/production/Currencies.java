package rollbook.production;

import java.util.Currency;
import org.springframework.validation.BindingResult;
import rollbook.web.Typed;

/** The currencies of ISO 4217 that money is counted in; codes for metals and for tests are none. */
final class Currencies {
    private Currencies() {}

    static void check(String code, BindingResult result) {
        boolean known = Currency.getAvailableCurrencies().stream()
                .anyMatch(currency ->
                        currency.getCurrencyCode().equals(code) && currency.getDefaultFractionDigits() >= 0);
        if (Typed.isReadable(result) && !known) {
            result.rejectValue("currency", "production.currency.unknown", new Object[] {code}, null);
        }
    }
}
