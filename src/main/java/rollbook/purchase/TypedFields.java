package rollbook.purchase;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.regex.Pattern;
import org.springframework.validation.BindingResult;

/** Reads what was typed into fields one by one; what can't be read is told at its field, and the rest is read on. */
final class TypedFields {
    private static final Pattern COUNT = Pattern.compile("\\d{1,6}");

    private final BindingResult result;

    TypedFields(BindingResult result) {
        this.result = result;
    }

    /** A form without a version, or with nonsense for one, was made before any that exists. */
    static int version(String typed) {
        return typed.matches("\\d{1,9}") ? Integer.parseInt(typed) : -1;
    }

    /** @param key of the message that says what is wrong */
    void wrong(String field, String key, Object... args) {
        result.rejectValue(field, key, args, null);
    }

    boolean isSound() {
        return !result.hasErrors();
    }

    /** None where nothing was typed, or what was typed is no count. */
    int count(String field, String text) {
        if (text.isEmpty()) {
            return 0;
        }
        if (!COUNT.matcher(text).matches()) {
            wrong(field, "purchase.problem.count");
            return 0;
        }
        return Integer.parseInt(text);
    }

    /** Empty, and told, if it isn't a date. */
    Optional<LocalDate> date(String field, String text) {
        try {
            LocalDate date = LocalDate.parse(text);
            // Beyond these years it is a typing error, and beyond some the database's dates end.
            if (date.getYear() >= 1900 && date.getYear() < 3000) {
                return Optional.of(date);
            }
        } catch (DateTimeParseException notDate) {
            // Told below with the rest.
        }
        wrong(field, "purchase.problem.date");
        return Optional.empty();
    }

    void atMost(String field, String text, int characters) {
        if (text.codePointCount(0, text.length()) > characters) {
            wrong(field, "purchase.problem.long", characters);
        }
    }
}
