package rollbook.hire;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Component;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Listing;

/** Reads which hired items an address asks for, and in which order. */
@Component
class HireListing {
    private final Display display;

    HireListing(Display display) {
        this.display = display;
    }

    /** What the list may be sorted by, group by group; equal ones the first due first. */
    enum Column {
        ITEMS(Comparator.comparing((List<Hired> group) ->
                group.get(0).agreementCode() + group.get(0).item().code())),
        DUE(Comparator.comparing(
                (List<Hired> group) -> group.get(0).dueOn(), Comparator.nullsLast(Comparator.naturalOrder()))),
        SUPPLIER(Comparator.comparing(
                (List<Hired> group) -> group.get(0).supplier().toLowerCase(Locale.ROOT)));

        private final Comparator<List<Hired>> ascending;

        Column(Comparator<List<Hired>> ascending) {
            this.ascending = ascending;
        }
    }

    /**
     * @param supplier empty for all
     * @param text in lower case, found in what is said of an item; empty for all
     */
    record Asked(Listing listing, String supplier, String text, Listing.Order<Column> order) {
        boolean isFor(Hired hired) {
            return (supplier.isEmpty() || hired.supplier().equals(supplier))
                    && (text.isEmpty()
                            || String.join(
                                            " ",
                                            hired.item().code(),
                                            hired.item().model(),
                                            hired.agreementCode(),
                                            hired.supplier())
                                    .toLowerCase(Locale.ROOT)
                                    .contains(text));
        }

        Comparator<List<Hired>> groups() {
            return order.of(order.column().ascending);
        }
    }

    Asked read(String path, Map<String, String> address, List<Hired> all) {
        Listing listing = Listing.of(path, address);
        String supplier = listing.choose(
                "supplier",
                display.text("hire.column.supplier"),
                display.text("hire.list.any-supplier"),
                all.stream()
                        .map(Hired::supplier)
                        .filter(name -> !name.isEmpty())
                        .distinct()
                        .sorted()
                        .map(name -> new Choice(name, name))
                        .toList());
        String text = listing.text("q", display.text("hire.list.text")).toLowerCase(Locale.ROOT);
        return new Asked(
                listing,
                supplier,
                text,
                listing.order(
                        Column.values(),
                        new Listing.Order<>(Column.DUE, false),
                        column -> display.text("hire.column." + column.name().toLowerCase(Locale.ROOT))));
    }
}
