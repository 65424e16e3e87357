package rollbook.schedule;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Component;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Listing;

/** Reads which shooting days an address asks for, and in which order. */
@Component
class DayListing {
    private final Display display;

    DayListing(Display display) {
        this.display = display;
    }

    /** What each unit's days may be sorted by; equal ones by date. */
    enum Column {
        DATE(Comparator.comparing((UnitDays.Row row) -> row.day().date())),
        STATE(Comparator.comparing((UnitDays.Row row) -> row.day().state())),
        MINUTES(Comparator.comparing((UnitDays.Row row) -> row.totals().minutes())),
        BYTES(Comparator.comparing((UnitDays.Row row) -> row.totals().bytes()));

        private final Comparator<UnitDays.Row> ascending;

        Column(Comparator<UnitDays.Row> ascending) {
            this.ascending = ascending;
        }
    }

    /**
     * @param state of {@link DayState}, empty for all
     * @param text in lower case, found in a day's number or note; empty for all
     */
    record Asked(Listing listing, String state, String text, Listing.Order<Column> order) {
        /** The unit's days that are asked for; its total stays that of all. */
        UnitDays of(UnitDays unit) {
            return new UnitDays(
                    unit.unit(),
                    unit.rows().stream()
                            .filter(this::isFor)
                            .sorted(order.of(order.column().ascending).thenComparing(Column.DATE.ascending))
                            .toList(),
                    unit.total());
        }

        private boolean isFor(UnitDays.Row row) {
            String holiday = row.holiday() == null ? "" : row.holiday();
            return (state.isEmpty() || row.day().state().name().equals(state))
                    && (text.isEmpty()
                            || String.join(
                                            " ",
                                            Integer.toString(row.day().number()),
                                            row.day().note(),
                                            holiday)
                                    .toLowerCase(Locale.ROOT)
                                    .contains(text));
        }
    }

    Asked read(String path, Map<String, String> address) {
        Listing listing = Listing.of(path, address);
        List<Choice> states = Arrays.stream(DayState.values())
                .map(state -> new Choice(state.name(), display.text("schedule.state." + state)))
                .toList();
        String state = listing.choose(
                "state", display.text("schedule.column.state"), display.text("schedule.list.any-state"), states);
        String text = listing.text("q", display.text("schedule.list.text")).toLowerCase(Locale.ROOT);
        return new Asked(
                listing,
                state,
                text,
                listing.order(
                        Column.values(),
                        new Listing.Order<>(Column.DATE, false),
                        column ->
                                display.text("schedule.column." + column.name().toLowerCase(Locale.ROOT))));
    }
}
