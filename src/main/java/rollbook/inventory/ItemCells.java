package rollbook.inventory;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.quantity.Money;

/** The cells of one line, read one by one; what can't be read is noted and the rest is read on. */
final class ItemCells {
    /** What can be printed as a bar code, stands in a file name, and is read out without being spelt. */
    static final Pattern CODE = Pattern.compile("[A-Z0-9][A-Z0-9._-]{0,31}");

    private static final Pattern NUMBER = Pattern.compile("\\d{1,18}(\\.\\d{1,12})?");
    private static final Pattern CONTROL = Pattern.compile("[\\p{Cc}\\p{Cs}\\p{Zl}\\p{Zp}]");
    private static final int EXCERPT = 40;

    private final Map<Column, String> cells;
    private final List<Problem> problems = new ArrayList<>();

    ItemCells(Map<Column, String> cells) {
        this.cells = cells;
    }

    List<Problem> problems() {
        return List.copyOf(problems);
    }

    void wrong(Column column, String key, Object... args) {
        problems.add(Problem.in(column, key, args));
    }

    String get(Column column) {
        return cells.getOrDefault(column, "").strip();
    }

    boolean filled(Column column) {
        return !get(column).isEmpty();
    }

    String code() {
        String code = text(Column.CODE, 32, true).toUpperCase(Locale.ROOT);
        if (!code.isEmpty() && !CODE.matcher(code).matches()) {
            wrong(Column.CODE, "inventory.problem.code", excerpt(code));
        }
        return code;
    }

    String text(Column column, int most, boolean required) {
        String text = get(column);
        if (text.isEmpty() && required) {
            wrong(column, "inventory.problem.missing");
        } else if (CONTROL.matcher(text).find()) {
            wrong(column, "inventory.problem.unprintable");
        } else if (text.codePointCount(0, text.length()) > most) {
            wrong(column, "inventory.problem.too-long", excerpt(text), most);
        } else {
            return text;
        }
        return "";
    }

    <E extends Enum<E>> @Nullable E word(Column column, E[] values, @Nullable E ifEmpty) {
        String text = get(column);
        if (text.isEmpty()) {
            if (ifEmpty == null) {
                wrong(column, "inventory.problem.missing");
            }
            return ifEmpty;
        }
        for (E value : values) {
            if (value.name().equalsIgnoreCase(text)) {
                return value;
            }
        }
        String words = Arrays.stream(values).map(ItemCells::word).collect(Collectors.joining(", "));
        wrong(column, "inventory.problem.word", excerpt(text), words);
        return null;
    }

    /** The thing of that name, whatever the case of its letters. */
    <T> @Nullable T named(Column column, List<T> things, Function<T, String> name, boolean required) {
        String text = get(column);
        if (text.isEmpty()) {
            if (required) {
                wrong(column, "inventory.problem.missing");
            }
            return null;
        }
        for (T thing : things) {
            if (name.apply(thing).equalsIgnoreCase(text)) {
                return thing;
            }
        }
        String names = things.isEmpty() ? "–" : things.stream().map(name).collect(Collectors.joining(", "));
        wrong(column, "inventory.problem.unknown-name", excerpt(text), names);
        return null;
    }

    @Nullable
    Long bytes(Column column, DecimalUnit unit) {
        BigDecimal amount = number(column);
        if (amount == null) {
            return null;
        }
        if (amount.signum() == 0) {
            wrong(column, "inventory.problem.number", excerpt(get(column)));
            return null;
        }
        try {
            return unit.toBytes(amount);
        } catch (ArithmeticException notWholeBytes) {
            wrong(column, "inventory.problem.bytes", excerpt(get(column)));
            return null;
        }
    }

    @Nullable
    Long money(Column column, Money money) {
        BigDecimal amount = number(column);
        if (amount == null) {
            return null;
        }
        try {
            return money.toMinorUnits(amount);
        } catch (ArithmeticException tooFine) {
            wrong(
                    column,
                    "inventory.problem.money",
                    excerpt(get(column)),
                    money.currency().getCurrencyCode(),
                    money.digits());
            return null;
        }
    }

    @Nullable
    LocalDate date(Column column) {
        String text = get(column);
        if (text.isEmpty()) {
            return null;
        }
        try {
            LocalDate date = LocalDate.parse(text);
            // Beyond these years it is a typing error, and beyond some the database's dates end.
            if (date.getYear() >= 1900 && date.getYear() < 3000) {
                return date;
            }
        } catch (DateTimeParseException notADate) {
            // Noted below with the rest.
        }
        wrong(column, "inventory.problem.date", excerpt(text));
        return null;
    }

    private @Nullable BigDecimal number(Column column) {
        String text = get(column);
        if (text.isEmpty()) {
            return null;
        }
        if (!NUMBER.matcher(text).matches()) {
            wrong(column, "inventory.problem.number", excerpt(text));
            return null;
        }
        return new BigDecimal(text);
    }

    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }

    /** Enough of what was written to recognise it. */
    static String excerpt(String text) {
        String printable = CONTROL.matcher(text).replaceAll("\uFFFD");
        return printable.codePointCount(0, printable.length()) <= EXCERPT
                ? printable
                : printable.substring(0, printable.offsetByCodePoints(0, EXCERPT)) + "…";
    }
}
