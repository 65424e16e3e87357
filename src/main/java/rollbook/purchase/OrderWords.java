package rollbook.purchase;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.purchase.OrderStep.Kind;
import rollbook.purchase.PurchaseOrder.State;
import rollbook.web.Display;

/** Orders and what became of them, in words. */
@Component
class OrderWords {
    private final Display display;

    OrderWords(Display display) {
        this.display = display;
    }

    /** How an order stands and what it waits for. */
    String sentence(PurchaseOrder order, Lateness lateness, Currency currency) {
        OrderHistory history = order.history();
        String number = Integer.toString(order.number());
        return switch (order.state()) {
            case PROPOSED -> proposed(order, currency);
            case APPROVED ->
                display.text(
                        "purchase.says.APPROVED", by(history.last(Kind.APPROVED).orElse(null)), order.supplierName());
            case PLACED, PART_ARRIVED -> awaited(order, lateness);
            case ARRIVED, CLOSED ->
                display.text(
                        (order.came() == order.items() ? "purchase.says.all-came" : "purchase.says.some-came")
                                + (order.state() == State.CLOSED ? ".closed" : ""),
                        order.items(),
                        order.came(),
                        number);
            case DECLINED ->
                ended("purchase.says.DECLINED", history.last(Kind.DECLINED).orElse(null));
            case CANCELLED ->
                ended("purchase.says.CANCELLED", history.last(Kind.CANCELLED).orElse(null));
        };
    }

    private String proposed(PurchaseOrder order, Currency currency) {
        String who = by(order.history().last(Kind.PROPOSED).orElse(null));
        Long total = order.totalMinorUnits();
        return order.isComplete() && total != null
                ? display.text("purchase.says.PROPOSED", who, display.money(total, currency))
                : display.text("purchase.says.incomplete", who);
    }

    private String awaited(PurchaseOrder order, Lateness lateness) {
        LocalDate expected = Objects.requireNonNull(order.expectedOn());
        String key = order.state() == State.PLACED ? "purchase.says.PLACED" : "purchase.says.PART_ARRIVED";
        return display.text(
                key + ending(order, lateness),
                order.left(),
                display.shortDate(expected),
                order.came(),
                order.items(),
                display.shortDate(lateness.lateAfter().getOrDefault(order.id(), expected)));
    }

    private static String ending(PurchaseOrder order, Lateness lateness) {
        if (lateness.isLate(order)) {
            return ".late";
        }
        return lateness.isOverdue(order) ? ".overdue" : "";
    }

    private String ended(String key, @Nullable OrderStep step) {
        return display.text(key, by(step), step == null ? "" : step.reason());
    }

    private static String by(@Nullable OrderStep step) {
        return step == null ? "" : step.byName();
    }

    /** 5 × shuttle drive, 2 × tape. */
    String what(PurchaseOrder order) {
        return order.lines().stream()
                .map(line -> display.text("purchase.what", line.items(), line.model()))
                .collect(Collectors.joining(", "));
    }

    String total(PurchaseOrder order, Currency currency) {
        return amount(order.totalMinorUnits(), currency);
    }

    String amount(@Nullable Long minorUnits, Currency currency) {
        return minorUnits == null ? display.text("purchase.unknown-price") : display.money(minorUnits, currency);
    }

    /** A line's price: of an item, or of an item and week. */
    String unit(OrderLine line, Currency currency) {
        return line.isHired() && line.unitMinorUnits() != null
                ? display.text("purchase.per-week", amount(line.unitMinorUnits(), currency))
                : amount(line.unitMinorUnits(), currency);
    }

    /** A date that matters in the list: when it comes, or when it is needed. */
    String date(PurchaseOrder order, Lateness lateness) {
        LocalDate expected = order.expectedOn();
        if (order.isAwaited() && expected != null) {
            return display.text(
                    lateness.isLate(order)
                            ? "purchase.date.late"
                            : lateness.isOverdue(order) ? "purchase.date.overdue" : "purchase.date.expected",
                    display.shortDate(expected));
        }
        LocalDate came = order.lastCameOn();
        if (came != null) {
            return display.text("purchase.date.came", display.shortDate(came));
        }
        LocalDate needed = order.neededBy();
        return order.isOpen() && needed != null
                ? display.text("purchase.date.needed", display.shortDate(needed))
                : display.text("web.none");
    }

    /** What happened in a step. */
    String step(OrderStep step, ZoneId zone, List<OrderStep> all) {
        String key = "purchase.step." + step.kind();
        LocalDate expected = step.expectedOn();
        String takenBack = all.stream()
                .filter(one -> Integer.valueOf(one.number()).equals(step.takenBackStep()))
                .map(one -> display.text("purchase.step.name." + one.kind()))
                .findFirst()
                .orElse("");
        return display.text(
                key,
                display.moment(step.at(), zone),
                step.byName(),
                step.onDate() == null ? "" : display.shortDate(step.onDate()),
                expected == null ? "" : display.shortDate(expected),
                step.reason(),
                takenBack);
    }

    /** Who may approve an order of that amount, the nearest first. */
    String approvers(List<String> roles) {
        return String.join(
                ", ",
                roles.stream()
                        .map(role -> display.text("purchase.approver." + role.toUpperCase(Locale.ROOT)))
                        .toList());
    }

    /** What waits for somebody, and what is on its way. */
    String sentence(List<PurchaseOrder> orders, Lateness lateness) {
        List<String> parts = new ArrayList<>();
        add(parts, "purchase.list.proposed", count(orders, State.PROPOSED));
        add(parts, "purchase.list.approved", count(orders, State.APPROVED));
        List<PurchaseOrder> awaited =
                orders.stream().filter(PurchaseOrder::isAwaited).toList();
        long late = awaited.stream().filter(lateness::isLate).count();
        add(parts, "purchase.list.late", late);
        awaited.stream()
                .filter(order -> !lateness.isLate(order))
                .map(PurchaseOrder::expectedOn)
                .filter(Objects::nonNull)
                .min(LocalDate::compareTo)
                .ifPresent(next -> parts.add(
                        display.text("purchase.list.awaited", awaited.size() - late, display.shortDate(next))));
        if (parts.isEmpty()) {
            return display.text("purchase.list.quiet");
        }
        return String.join(", ", parts) + ".";
    }

    private void add(List<String> parts, String key, long count) {
        if (count > 0) {
            parts.add(display.text(key, count));
        }
    }

    private static long count(List<PurchaseOrder> orders, State state) {
        return orders.stream().filter(order -> order.state() == state).count();
    }
}
