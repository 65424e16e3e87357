package rollbook.web;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What the address of a list asks for: its filters, its order and its page; and the addresses that ask for something else of
 * the same list. A list declares one after the other what it takes. What it doesn't understand it passes over, and tells.
 */
public final class Listing {
    private static final String SORT = "sort";
    private static final String PAGE = "page";
    private static final int LONGEST_TEXT = 200;

    private final String path;
    private final Map<String, String> asked;
    private final Map<String, String> understood = new LinkedHashMap<>();
    private final Set<String> known = new HashSet<>(Set.of(PAGE));
    private final List<ListFilter> filters = new ArrayList<>();
    private final List<Choice> also = new ArrayList<>();
    private final List<String> unknown = new ArrayList<>();
    private final Map<String, Column> columns = new LinkedHashMap<>();
    private String sortedBy = "";

    private Listing(String path, Map<String, String> asked) {
        this.path = path;
        this.asked = asked;
    }

    /** @param asked the parameters of the address */
    public static Listing of(String path, Map<String, String> asked) {
        Map<String, String> plain = new HashMap<>();
        asked.forEach((name, value) -> plain.put(name, plain(value)));
        return new Listing(path, plain);
    }

    /**
     * A column that the list may be sorted by.
     *
     * @param value as it stands in the address
     * @param sorted "ascending", "descending", or null while the list is sorted by another
     * @param href of the list sorted by it; by it the other way round, if it is sorted by it
     */
    public record Column(
            String value, String label, @Nullable String sorted, String href) {}

    /** By which column a list is sorted. */
    public record Order<C extends Enum<C>>(C column, boolean descending) {
        public <T> Comparator<T> of(Comparator<T> ascending) {
            return descending ? ascending.reversed() : ascending;
        }

        /** For SQL. */
        public String direction() {
            return descending ? " desc" : " asc";
        }
    }

    /** @return the value of one of the choices; empty for any */
    public String choose(String name, String label, String any, List<Choice> choices) {
        known.add(name);
        String value = asked(name);
        Choice choice = choices.stream()
                .filter(one -> one.value().equalsIgnoreCase(value))
                .findFirst()
                .orElse(null);
        if (choice == null && !value.isEmpty()) {
            unknown.add(value);
        }
        keep(name, choice == null ? "" : choice.value());
        add(name, label, ListFilter.Kind.CHOICE, any, choices, choice == null ? "" : choice.text());
        return understood.getOrDefault(name, "");
    }

    /** @return what is to be found in the rows; empty for anything */
    public String text(String name, String label) {
        known.add(name);
        String text = asked(name);
        keep(name, text.length() > LONGEST_TEXT ? text.substring(0, LONGEST_TEXT) : text);
        add(name, label, ListFilter.Kind.TEXT, "", List.of(), understood.getOrDefault(name, ""));
        return understood.getOrDefault(name, "");
    }

    public @Nullable LocalDate date(String name, String label) {
        known.add(name);
        LocalDate date = date(asked(name));
        keep(name, date == null ? "" : date.toString());
        add(name, label, ListFilter.Kind.DATE, "", List.of(), understood.getOrDefault(name, ""));
        return date;
    }

    /** A parameter that isn't a filter, but stays in the addresses. */
    public void also(String name) {
        known.add(name);
        String value = asked(name);
        keep(name, value);
        if (!value.isEmpty()) {
            also.add(new Choice(name, value));
        }
    }

    /**
     * Declared last, for the headings lead on with all filters. Only these columns are ever sorted by, whatever the address says.
     *
     * @param usual the order of a list whose address doesn't name one
     */
    public <C extends Enum<C>> Order<C> order(C[] all, Order<C> usual, Function<C, String> label) {
        known.add(SORT);
        String value = asked(SORT);
        boolean descending = value.startsWith("-");
        String name = descending ? value.substring(1) : value;
        Order<C> order = Arrays.stream(all)
                .filter(column -> value(column).equalsIgnoreCase(name))
                .findFirst()
                .map(column -> new Order<>(column, descending))
                .orElse(usual);
        if (!value.isEmpty() && !value(order).equalsIgnoreCase(value)) {
            unknown.add(value);
        }
        sortedBy = value(order);
        keep(SORT, order.equals(usual) ? "" : sortedBy);
        for (C column : all) {
            boolean by = column == order.column();
            String next = by && !order.descending() ? "-" + value(column) : value(column);
            columns.put(
                    column.name(),
                    new Column(
                            value(column),
                            label.apply(column),
                            !by ? null : order.descending() ? "descending" : "ascending",
                            address()
                                    .with(SORT, next.equals(value(usual)) ? "" : next)
                                    .toString()));
        }
        return order;
    }

    /** The page's number, from 1. */
    public int page() {
        String page = asked(PAGE);
        if (page.matches("0*[1-9]\\d{0,8}")) {
            return Integer.parseInt(page);
        }
        if (!page.isEmpty() && !unknown.contains(page)) {
            unknown.add(page);
        }
        return 1;
    }

    public boolean narrows() {
        return filters.stream().anyMatch(ListFilter::narrows);
    }

    public List<ListFilter> filters() {
        return filters.stream()
                .map(filter ->
                        filter.droppedBy(address().with(filter.name(), "").toString()))
                .toList();
    }

    /** Those that let only some rows through. */
    public List<ListFilter> narrowing() {
        return filters().stream().filter(ListFilter::narrows).toList();
    }

    public List<Column> columns() {
        return List.copyOf(columns.values());
    }

    /** @param name of the constant */
    public Column column(String name) {
        Column column = columns.get(name);
        if (column == null) {
            throw new IllegalArgumentException(name + " is no column of the list");
        }
        return column;
    }

    /** As it stands in the address; empty if the list can't be sorted. */
    public String sortedBy() {
        return sortedBy;
    }

    /** What stands in the address and the list knows nothing of: values and parameters. */
    public List<String> unknown() {
        List<String> all = new ArrayList<>(unknown);
        asked.keySet().stream().filter(name -> !known.contains(name)).sorted().forEach(all::add);
        return all;
    }

    /** Its address without any parameter, for a form that sends them. */
    public String path() {
        return path;
    }

    /** What isn't a filter but stays in the addresses: names and values. */
    public List<Choice> also() {
        return List.copyOf(also);
    }

    /** The list's address without its filters. */
    public String bare() {
        return address()
                .without(filters.stream().map(ListFilter::name).toList())
                .toString();
    }

    /** The list's address without its page. */
    public String href() {
        return address().toString();
    }

    /** The address of something else that takes the same filters, such as the list as a file. */
    public String at(String otherPath) {
        return address().at(otherPath).toString();
    }

    private ListAddress address() {
        return new ListAddress(path, understood);
    }

    private void keep(String name, String value) {
        if (!value.isEmpty()) {
            understood.put(name, value);
        }
    }

    private void add(String name, String label, ListFilter.Kind kind, String any, List<Choice> choices, String shown) {
        filters.add(new ListFilter(name, label, kind, any, choices, understood.getOrDefault(name, ""), shown, ""));
    }

    private @Nullable LocalDate date(String value) {
        if (value.isEmpty()) {
            return null;
        }
        try {
            LocalDate date = LocalDate.parse(value);
            if (date.getYear() >= 1900 && date.getYear() < 3000) {
                return date;
            }
        } catch (DateTimeParseException unreadable) {
            // Told below.
        }
        unknown.add(value);
        return null;
    }

    private String asked(String name) {
        return asked.getOrDefault(name, "");
    }

    private static String value(Order<?> order) {
        return (order.descending() ? "-" : "") + value(order.column());
    }

    private static String value(Enum<?> column) {
        return column.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static String plain(@Nullable String value) {
        return value == null ? "" : value.replaceAll("\\p{Cntrl}", "").strip();
    }
}
