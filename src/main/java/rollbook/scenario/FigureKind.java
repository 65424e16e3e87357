package rollbook.scenario;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How a figure of a scenario is written. What is kept is always in the one form that {@link #read} gives. */
enum FigureKind {
    /** A time of the day, 08:00. */
    TIME("text", "scenario.wrong.time"),
    /** Spans of the day, 13:00-14:00, 18:30-18:45; perhaps none. */
    SPANS("text", "scenario.wrong.spans"),
    /** A number that may have decimals. */
    NUMBER("decimal", "scenario.wrong.number"),
    /** A whole number. */
    COUNT("numeric", "scenario.wrong.count"),
    /** An amount of the production's currency. */
    MONEY("decimal", "scenario.wrong.number"),
    /** One of several things. */
    CHOICE("text", "scenario.wrong.choice");

    private static final Pattern CLOCK = Pattern.compile("([01]?\\d|2[0-3])[:.]?([0-5]\\d)");
    private static final Pattern SPAN = Pattern.compile("\\s*(\\S+?)\\s*(?:-|–|to)\\s*(\\S+)\\s*");
    private static final int MOST_DIGITS = 12;

    private final String inputMode;
    private final String problem;

    FigureKind(String inputMode, String problem) {
        this.inputMode = inputMode;
        this.problem = problem;
    }

    /** Which keys a phone offers. */
    String inputMode() {
        return inputMode;
    }

    /** The message for what can't be read. */
    String problem() {
        return problem;
    }

    /**
     * What was typed, in the form that is kept.
     *
     * @throws IllegalArgumentException if it can't be read
     */
    String read(String typed) {
        String text = typed.strip();
        return switch (this) {
            case TIME -> time(text);
            case SPANS -> spans(text);
            case NUMBER, MONEY -> number(text).toPlainString();
            case COUNT -> Integer.toString(number(text).intValueExact());
            case CHOICE -> text;
        };
    }

    private static String time(String text) {
        Matcher clock = CLOCK.matcher(text);
        if (!clock.matches()) {
            throw new IllegalArgumentException("no time: " + text);
        }
        return String.format(Locale.ROOT, "%02d:%s", Integer.parseInt(clock.group(1)), clock.group(2));
    }

    private static String spans(String text) {
        if (text.isEmpty()) {
            return "";
        }
        StringBuilder spans = new StringBuilder();
        for (String part : text.split("[,;]")) {
            Matcher span = SPAN.matcher(part);
            if (!span.matches()) {
                throw new IllegalArgumentException("no span: " + part);
            }
            spans.append(spans.isEmpty() ? "" : ", ")
                    .append(time(span.group(1)))
                    .append('-')
                    .append(time(span.group(2)));
        }
        return spans.toString();
    }

    /** A comma is read as a decimal point. */
    private static BigDecimal number(String text) {
        BigDecimal number;
        try {
            number = new BigDecimal(text.replace(',', '.')).stripTrailingZeros();
        } catch (NumberFormatException unreadable) {
            throw new IllegalArgumentException("no number: " + text, unreadable);
        }
        if (number.precision() > MOST_DIGITS || Math.abs(number.scale()) > MOST_DIGITS) {
            throw new IllegalArgumentException("too many digits: " + text);
        }
        return number.scale() < 0 ? number.setScale(0) : number;
    }
}
