package rollbook.reporting;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A date as people type it: 2026-11-27, 27.11.2026, 27/11, 27 Nov, 27 November 2026. The day stands before the month. */
final class TypedDate {
    private static final Pattern ISO = Pattern.compile("(\\d{4})-(\\d{1,2})-(\\d{1,2})");
    private static final Pattern FIGURES = Pattern.compile("(\\d{1,2})[./](\\d{1,2})(?:[./](\\d{4})?)?");
    private static final Pattern WORD = Pattern.compile("(\\d{1,2})\\.?\\s*([a-z]{3,9})\\.?\\s*(\\d{4})?");
    private static final List<String> MONTHS = List.of(
            "january",
            "february",
            "march",
            "april",
            "may",
            "june",
            "july",
            "august",
            "september",
            "october",
            "november",
            "december");

    private TypedDate() {}

    /** Without a year it is the one nearest to today. */
    static Optional<LocalDate> read(String typed, LocalDate today) {
        String text = typed.strip().toLowerCase(Locale.ROOT);
        Matcher iso = ISO.matcher(text);
        if (iso.matches()) {
            return date(number(iso.group(1)), number(iso.group(2)), number(iso.group(3)));
        }
        Matcher figures = FIGURES.matcher(text);
        if (figures.matches()) {
            return date(figures.group(3), number(figures.group(2)), number(figures.group(1)), today);
        }
        Matcher word = WORD.matcher(text);
        return word.matches()
                ? date(word.group(3), month(word.group(2)), number(word.group(1)), today)
                : Optional.empty();
    }

    private static Optional<LocalDate> date(String year, int month, int day, LocalDate today) {
        if (year != null) {
            return date(number(year), month, day);
        }
        return Stream.of(-1, 0, 1)
                .map(away -> date(today.getYear() + away, month, day))
                .flatMap(Optional::stream)
                .min(Comparator.comparing(date -> Math.abs(date.toEpochDay() - today.toEpochDay())));
    }

    private static Optional<LocalDate> date(int year, int month, int day) {
        try {
            return Optional.of(LocalDate.of(year, month, day));
        } catch (DateTimeException none) {
            return Optional.empty();
        }
    }

    /** 0 if it is none. */
    private static int month(String word) {
        for (String month : MONTHS) {
            if (month.startsWith(word)) {
                return MONTHS.indexOf(month) + 1;
            }
        }
        return 0;
    }

    private static int number(String digits) {
        return Integer.parseInt(digits);
    }
}
