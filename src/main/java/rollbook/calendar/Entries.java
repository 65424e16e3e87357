package rollbook.calendar;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import rollbook.forecast.Forecasts;
import rollbook.forecast.MediaOrder;
import rollbook.forecast.MediaOrders;
import rollbook.forecast.StorageOutlook;
import rollbook.inventory.HireReturn;
import rollbook.inventory.HireReturns;
import rollbook.production.Membership;
import rollbook.verification.Rechecks;
import rollbook.web.Display;

/** What is due in a production, as its pages say it. Whoever belongs to the production may read all of it. */
@Component
class Entries {
    private final Forecasts forecasts;
    private final MediaOrders orders;
    private final HireReturns hires;
    private final Rechecks rechecks;
    private final Display display;

    Entries(Forecasts forecasts, MediaOrders orders, HireReturns hires, Rechecks rechecks, Display display) {
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
                        hires.of(production).stream().map(item -> hireReturn(viewer, item)),
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

    private Entry arrival(Membership viewer, MediaOrder order) {
        String what = display.text(
                order.supplierName().isEmpty() ? "calendar.arrival.what" : "calendar.arrival.what.from",
                order.left(),
                order.items(),
                display.size(order.itemCapacityBytes()),
                display.date(order.orderedOn()),
                order.supplierName());
        return new Entry(
                uid("arrival", order.id()),
                order.expectedOn(),
                display.text("calendar.arrival", order.left(), order.legName()),
                order.note().isEmpty() ? what : what + "\n" + order.note(),
                viewer.path("storage/orders/" + order.id()),
                order.changedAt(),
                order.steps());
    }

    private Entry hireReturn(Membership viewer, HireReturn item) {
        return new Entry(
                uid("hire-return", item.itemId()),
                item.hiredUntil(),
                display.text(
                        item.supplier().isEmpty() ? "calendar.hire-return" : "calendar.hire-return.to",
                        item.code(),
                        item.supplier()),
                display.text("calendar.hire-return.what", item.code(), item.model()),
                viewer.path("media/" + item.itemId()),
                item.registeredAt(),
                item.version());
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
