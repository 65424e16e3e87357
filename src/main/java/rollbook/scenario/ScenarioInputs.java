package rollbook.scenario;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Money;

/**
 * All that the answers of a scenario follow from: the same inputs give the same answers.
 *
 * @param values by the keys of {@link Figure}, each in the form of its kind; what is empty has no entry
 * @param seed of the chance in its replicates
 * @param methodId which way of computing they were made for
 */
record ScenarioInputs(DayFacts facts, Map<String, String> values, long seed, String methodId) {
    /** A change of the computing is a new one. */
    static final String METHOD_ID = "turnaround-1";

    ScenarioInputs {
        values = new LinkedHashMap<>(values);
    }

    /** Whether they were saved for the way in which they are computed now; else the answers may differ from those of then. */
    public boolean ofThisMethod() {
        return methodId.equals(METHOD_ID);
    }

    /** @throws IllegalStateException if there is no such value: inputs are checked before they are made */
    String text(String key) {
        String value = values.get(key);
        if (value == null) {
            throw new IllegalStateException("A scenario without " + key);
        }
        return value;
    }

    String text(Figure figure) {
        return text(figure.key());
    }

    BigDecimal number(String key) {
        return new BigDecimal(text(key));
    }

    double number(Figure figure) {
        return number(figure.key()).doubleValue();
    }

    int count(Figure figure) {
        return number(figure.key()).intValueExact();
    }

    /** Null where nothing was said. */
    @Nullable
    BigDecimal maybe(Figure figure) {
        String value = values.get(figure.key());
        return value == null ? null : new BigDecimal(value);
    }

    /** An amount of money in the currency's smallest unit, null where nothing was said. */
    @Nullable
    Long money(Figure figure, Money money) {
        BigDecimal value = maybe(figure);
        return value == null ? null : money.toMinorUnits(value);
    }
}
