package rollbook.hire;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.label.CodeList;
import rollbook.web.Display;

/** Hires in words. */
@Component
class HireWords {
    private final Display display;

    HireWords(Display display) {
        this.display = display;
    }

    /** How many items are hired at what, and which is due back first. */
    String sentence(List<Hired> here, LocalDate today, Currency currency) {
        if (here.isEmpty()) {
            return display.text("hire.sentence.none");
        }
        long unknown =
                here.stream().filter(hired -> hired.weekMinorUnits() == null).count();
        return Stream.of(
                        display.text("hire.sentence", here.size(), money(weekMinorUnits(here), currency)),
                        unknown == 0 ? "" : display.text("hire.sentence.unknown", unknown),
                        next(here, today))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(" "));
    }

    private String next(List<Hired> here, LocalDate today) {
        List<Hired> overdue =
                here.stream().filter(hired -> hired.isOverdue(today)).toList();
        List<Hired> due = here.stream().filter(hired -> hired.dueOn() != null).toList();
        List<Hired> first = overdue.isEmpty() ? due : overdue;
        return first.stream()
                .map(Hired::dueOn)
                .filter(Objects::nonNull)
                .min(Comparator.naturalOrder())
                .map(date -> {
                    List<String> codes = first.stream()
                            .filter(hired -> date.equals(hired.dueOn()))
                            .map(hired -> hired.item().code())
                            .toList();
                    String key = overdue.isEmpty()
                            ? date.equals(today) ? "hire.sentence.today" : "hire.sentence.next"
                            : "hire.sentence.overdue";
                    return display.text(key, codes.get(0), codes.size() - 1, display.date(date), days(date, today));
                })
                .orElse("");
    }

    /** How far a due date is away. */
    String due(@Nullable LocalDate due, LocalDate today) {
        if (due == null) {
            return display.text("hire.due.unknown");
        }
        String key = due.isBefore(today) ? "hire.due.overdue" : due.equals(today) ? "hire.due.today" : "hire.due.ahead";
        return display.text(key, display.shortDate(due), days(due, today));
    }

    /** Codes, runs of them drawn together. */
    String codes(List<Hired> items) {
        return CodeList.write(items.stream().map(hired -> hired.item().code()).toList());
    }

    /** 16 × camera card, 1 TB. */
    String what(List<Hired> items) {
        return items.stream()
                .collect(
                        Collectors.groupingBy(hired -> hired.item().model(), LinkedHashMap::new, Collectors.counting()))
                .entrySet()
                .stream()
                .map(model -> display.text("hire.what", model.getValue(), model.getKey()))
                .collect(Collectors.joining("; "));
    }

    String money(long minorUnits, Currency currency) {
        return display.money(minorUnits, currency);
    }

    /** What they come to by their due dates; by today where none is known. */
    String untilDue(List<Hired> items, LocalDate today, Currency currency) {
        long sum = items.stream()
                .map(hired -> hired.ifReturnedOn(Objects.requireNonNullElse(hired.dueOn(), today))
                        .orElse(HireCost.NONE))
                .mapToLong(HireCost::totalMinorUnits)
                .reduce(0, Math::addExact);
        return known(items, sum, currency);
    }

    /** What it would come to if all of them went back on a date. */
    String ifReturnedOn(LocalDate date, List<Hired> items, Currency currency) {
        long sum = items.stream()
                .map(hired -> hired.ifReturnedOn(date).orElse(HireCost.NONE))
                .mapToLong(HireCost::totalMinorUnits)
                .reduce(0, Math::addExact);
        return known(items, sum, currency);
    }

    /** What being late has cost until a date. */
    long lateMinorUnits(List<Hired> items, LocalDate today) {
        return items.stream()
                .map(hired -> hired.ifReturnedOn(today).orElse(HireCost.NONE))
                .mapToLong(HireCost::lateMinorUnits)
                .reduce(0, Math::addExact);
    }

    /** What the first week after the due date adds. */
    String weekLate(List<Hired> items, Currency currency) {
        long sum = items.stream()
                .filter(hired -> hired.dueOn() != null)
                .flatMap(hired -> hired.terms().stream())
                .mapToLong(HireCost::firstLateWeekMinorUnits)
                .reduce(0, Math::addExact);
        boolean due = items.stream().anyMatch(hired -> hired.dueOn() != null);
        return due ? known(items, sum, currency) : display.text("hire.cost.unknown");
    }

    private String known(List<Hired> items, long sum, Currency currency) {
        long unknown = items.stream().filter(hired -> hired.terms().isEmpty()).count();
        if (unknown == items.size()) {
            return display.text("hire.cost.unknown");
        }
        return unknown == 0 ? money(sum, currency) : display.text("hire.cost.partly", money(sum, currency), unknown);
    }

    String late(TermsEntry terms, Currency currency) {
        Long day = terms.lateDayMinorUnits();
        return day == null ? display.text("hire.late.weekly") : display.text("hire.late.daily", money(day, currency));
    }

    /** What was entered, in one line. */
    String entry(TermsEntry entry, Currency currency) {
        return display.text(
                "hire.entry",
                entry.supplier(),
                display.shortDate(entry.startedOn()),
                display.shortDate(entry.dueOn()),
                entry.minimumWeeks(),
                late(entry, currency));
    }

    static long weekMinorUnits(List<Hired> here) {
        return here.stream()
                .map(Hired::weekMinorUnits)
                .filter(Objects::nonNull)
                .mapToLong(Long::longValue)
                .reduce(0, Math::addExact);
    }

    private static long days(LocalDate date, LocalDate today) {
        return Math.abs(ChronoUnit.DAYS.between(today, date));
    }
}
