package rollbook.calendar;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import rollbook.forecast.Forecasts;
import rollbook.forecast.StorageOutlook;
import rollbook.inventory.HireReturn;
import rollbook.inventory.HireReturns;
import rollbook.production.Membership;
import rollbook.purchase.OrderLine;
import rollbook.purchase.Orders;
import rollbook.purchase.PurchaseOrder;
import rollbook.verification.Rechecks;
import rollbook.web.Display;

/** What is due in a production, as far as a person may read it on its pages, and in their words. */
@Component
class Entries {
    private final Forecasts forecasts;
    private final Orders orders;
    private final HireReturns hires;
    private final Rechecks rechecks;
    private final Display display;

    Entries(Forecasts forecasts, Orders orders, HireReturns hires, Rechecks rechecks, Display display) {
        this.forecasts = forecasts;
        this.orders = orders;
        this.hires = hires;
        this.rechecks = rechecks;
        this.display = display;
    }

    /** The earliest first. */
    List<Entry> of(Membership viewer) {
        UUID production = viewer.productionId();
        return Stream.of(
                        forecasts.latest(production).stream().flatMap(outlook -> orderDates(viewer, outlook)),
                        orders.expected(production).stream().map(order -> arrival(viewer, order)),
                        hireReturns(viewer),
                        rechecks.dueDates(viewer).stream().map(due -> recheck(viewer, due)))
                .flatMap(entries -> entries)
                .sorted(Comparator.comparing(Entry::date).thenComparing(Entry::uid))
                .toList();
    }

    private Stream<Entry> orderDates(Membership viewer, StorageOutlook outlook) {
        return outlook.legs().stream()
                .filter(StorageOutlook.Leg::waitsForSomebody)
                .flatMap(leg -> Stream.ofNullable(leg.orderBy())
                        .map(date -> new Entry(
                                uid("order-by", leg.id()),
                                date,
                                display.text("calendar.order-by", leg.items(), leg.name()),
                                leg.sentence(),
                                viewer.path("storage"),
                                outlook.computedAt(),
                                0)));
    }

    private Entry arrival(Membership viewer, PurchaseOrder order) {
        String ordered = display.date(Objects.requireNonNull(order.orderedOn()));
        Stream<String> lines =
                order.lines().stream().filter(line -> line.left() > 0).map(this::line);
        return new Entry(
                uid("arrival", order.id()),
                Objects.requireNonNull(order.expectedOn()),
                display.text("calendar.arrival", order.left(), order.number()),
                Stream.concat(
                                lines,
                                Stream.of(
                                        order.supplierName().isEmpty()
                                                ? display.text("calendar.arrival.ordered", ordered)
                                                : display.text(
                                                        "calendar.arrival.ordered.from", ordered, order.supplierName()),
                                        order.note()))
                        .filter(text -> !text.isEmpty())
                        .collect(Collectors.joining("\n")),
                viewer.path("orders/" + order.id()),
                order.changedAt(),
                order.version());
    }

    private String line(OrderLine line) {
        return display.text(
                line.legName().isEmpty() ? "calendar.arrival.line" : "calendar.arrival.line.for",
                line.left(),
                line.items(),
                line.model(),
                line.legName());
    }

    /** One entry for what goes back to a supplier on a day: a hire of thirty cards is one thing to see to. */
    private Stream<Entry> hireReturns(Membership viewer) {
        return hires.of(viewer.productionId()).stream()
                .collect(Collectors.groupingBy(
                        item -> item.hiredUntil() + " " + item.supplier(), TreeMap::new, Collectors.toList()))
                .values()
                .stream()
                .map(items -> hireReturn(viewer, items));
    }

    private Entry hireReturn(Membership viewer, List<HireReturn> items) {
        HireReturn first = items.get(0);
        return new Entry(
                // By an item, so that the entry moves with a hire that is extended.
                uid("hire-return", first.itemId()),
                first.hiredUntil(),
                display.text(
                        first.supplier().isEmpty() ? "calendar.hire-return" : "calendar.hire-return.to",
                        items.size(),
                        first.code(),
                        first.supplier()),
                display.text(
                        "calendar.hire-return.what",
                        items.stream().map(HireReturn::code).collect(Collectors.joining(", "))),
                viewer.path(items.size() == 1 ? "media/" + first.itemId() : "media"),
                items.stream()
                        .map(HireReturn::registeredAt)
                        .max(Comparator.naturalOrder())
                        .orElseThrow(),
                0);
    }

    private Entry recheck(Membership viewer, Rechecks.DueDate due) {
        return new Entry(
                "re-check-" + due.date() + "-" + viewer.productionId() + "@rollbook",
                due.date(),
                display.text(
                        "calendar.re-check",
                        due.itemCodes().size(),
                        due.itemCodes().get(0)),
                display.text("calendar.re-check.what", String.join(", ", due.itemCodes())),
                viewer.path("re-checks"),
                startOf(due.newestCheckOn()),
                0);
    }

    private static String uid(String kind, UUID thing) {
        return kind + "-" + thing + "@rollbook";
    }

    private static Instant startOf(LocalDate date) {
        return date.atStartOfDay(ZoneOffset.UTC).toInstant();
    }
}
