package rollbook.purchase;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.purchase.PurchaseOrder.State;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Listing;
import rollbook.web.Paged;

/** Gathers what the list of orders shows, as far as its address asks for it. */
@Component
class OrderListPages {
    private final Orders orders;
    private final LateArrivals late;
    private final OrderWords words;
    private final Display display;

    OrderListPages(Orders orders, LateArrivals late, OrderWords words, Display display) {
        this.orders = orders;
        this.late = late;
        this.words = words;
        this.display = display;
    }

    /** What the list may be sorted by; equal ones the newest first. */
    enum Column {
        ORDER(Comparator.comparing(PurchaseOrder::number)),
        SUPPLIER(Comparator.comparing(order -> order.supplierName().toLowerCase(Locale.ROOT))),
        STATE(Comparator.comparing(PurchaseOrder::state)),
        TOTAL(Comparator.comparing(PurchaseOrder::totalMinorUnits, Comparator.nullsFirst(Comparator.naturalOrder())));

        static final Listing.Order<Column> USUAL = new Listing.Order<>(STATE, false);

        private final Comparator<PurchaseOrder> ascending;

        Column(Comparator<PurchaseOrder> ascending) {
            this.ascending = ascending;
        }

        static Comparator<PurchaseOrder> by(Listing.Order<Column> order) {
            return order.of(order.column().ascending)
                    .thenComparing(Comparator.comparing(PurchaseOrder::number).reversed());
        }
    }

    /** An order in the list. */
    record Row(PurchaseOrder order, String what, String date, boolean late, String total) {}

    /** What a sum of orders comes to. */
    record Sum(String name, String amount) {}

    /**
     * @param all how many orders there are
     * @param sums of all orders, whatever the list shows
     */
    record ListPage(String sentence, Listing list, int all, Paged<Row> paged, List<Sum> sums) {}

    ListPage page(Membership membership, Map<String, String> address) {
        List<PurchaseOrder> all = orders.list(membership.productionId());
        Lateness lateness = late.of(membership.productionId(), all);
        Currency currency = Currency.getInstance(membership.currency());
        Listing list = Listing.of(membership.path("orders"), address);
        String state = list.choose(
                "state", display.text("purchase.column.state"), display.text("purchase.list.any-state"), states(all));
        String supplier = list.choose(
                "supplier",
                display.text("purchase.column.supplier"),
                display.text("purchase.list.any-supplier"),
                suppliers(all));
        String text = list.text("q", display.text("purchase.list.text")).toLowerCase(Locale.ROOT);
        Comparator<PurchaseOrder> order = Column.by(list.order(
                Column.values(),
                Column.USUAL,
                column -> display.text("purchase.column." + column.name().toLowerCase(Locale.ROOT))));
        List<Row> rows = all.stream()
                .filter(one -> state.isEmpty() || one.state().name().equals(state))
                .filter(one -> supplier.isEmpty() || one.supplierName().equals(supplier))
                .sorted(order)
                .map(one -> new Row(
                        one,
                        words.what(one),
                        words.date(one, lateness),
                        lateness.isLate(one),
                        words.total(one, currency)))
                .filter(row -> holds(row, text))
                .toList();
        return new ListPage(
                words.sentence(all, lateness), list, all.size(), Paged.of(rows, list.page()), sums(all, currency));
    }

    /** With how many orders are in each. */
    private List<Choice> states(List<PurchaseOrder> all) {
        return Arrays.stream(State.values())
                .map(state -> new Choice(
                        state.name(),
                        display.text(
                                "purchase.list.state",
                                display.text("purchase.state." + state),
                                all.stream()
                                        .filter(order -> order.state() == state)
                                        .count())))
                .toList();
    }

    private static List<Choice> suppliers(List<PurchaseOrder> all) {
        return all.stream()
                .map(PurchaseOrder::supplierName)
                .filter(name -> !name.isEmpty())
                .distinct()
                .sorted()
                .map(name -> new Choice(name, name))
                .toList();
    }

    private boolean holds(Row row, String text) {
        return text.isEmpty()
                || (display.text("purchase.one.title", row.order().number()) + " " + row.what() + " "
                                + row.order().supplierName())
                        .toLowerCase(Locale.ROOT)
                        .contains(text);
    }

    private List<Sum> sums(List<PurchaseOrder> all, Currency currency) {
        return Stream.of(
                        sum("purchase.sum.open", all.stream().filter(PurchaseOrder::isOpen), currency),
                        sum("purchase.sum.awaited", all.stream().filter(PurchaseOrder::isAwaited), currency),
                        sum(
                                "purchase.sum.came",
                                all.stream()
                                        .filter(order ->
                                                order.state() == State.ARRIVED || order.state() == State.CLOSED),
                                currency))
                .flatMap(Stream::ofNullable)
                .toList();
    }

    /** Null if there are none. */
    private @Nullable Sum sum(String key, Stream<PurchaseOrder> of, Currency currency) {
        List<PurchaseOrder> summed = of.toList();
        List<Long> known = summed.stream()
                .map(order -> order.isOpen() ? order.totalMinorUnits() : order.owedMinorUnits())
                .filter(Objects::nonNull)
                .toList();
        if (summed.isEmpty()) {
            return null;
        }
        String amount = display.money(known.stream().reduce(0L, Math::addExact), currency);
        int unknown = summed.size() - known.size();
        return new Sum(
                display.text(key, summed.size()),
                unknown == 0 ? amount : display.text("purchase.sum.unknown", amount, unknown));
    }
}
