package rollbook.purchase;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.purchase.OrderPaper.Fact;
import rollbook.purchase.OrderPaper.Row;
import rollbook.purchase.OrderStep.Kind;
import rollbook.supplier.Contact;
import rollbook.supplier.Contacts;
import rollbook.web.Display;

/** Writes orders as their suppliers read them. */
@Component
class OrderPapers {
    private static final String TAKES_ORDERS = "order";

    private final Contacts contacts;
    private final OrderWords words;
    private final Display display;
    private final Clock clock;

    OrderPapers(Contacts contacts, OrderWords words, Display display, Clock clock) {
        this.contacts = contacts;
        this.words = words;
        this.display = display;
        this.clock = clock;
    }

    OrderPaper of(Membership membership, PurchaseOrder order) {
        Currency currency = Currency.getInstance(membership.currency());
        Contact contact = contact(membership, order.supplierId()).orElse(null);
        return new OrderPaper(
                display.text("purchase.paper.title", order.number()),
                membership.code() + "-" + order.number(),
                state(membership, order),
                isBinding(order),
                facts(membership, order, contact),
                order.lines().stream().map(line -> row(line, currency)).toList(),
                List.of(
                        fact("purchase.fact.delivery", display.money(order.deliveryMinorUnits(), currency)),
                        fact("purchase.fact.total", words.total(order, currency))),
                order.note(),
                contact == null || contact.email().isEmpty() ? null : contact.email());
    }

    /** Who takes orders, as far as the words for it say so: whom a letter reaches before others. */
    private Optional<Contact> contact(Membership membership, @Nullable UUID supplierId) {
        if (supplierId == null) {
            return Optional.empty();
        }
        return contacts.of(membership.productionId(), supplierId).stream()
                .filter(contact -> contact.role().toLowerCase(Locale.ROOT).contains(TAKES_ORDERS))
                .min(Comparator.comparing(contact -> contact.email().isEmpty()));
    }

    private static boolean isBinding(PurchaseOrder order) {
        return order.history().has(Kind.APPROVED) && !order.history().has(Kind.CANCELLED);
    }

    private String state(Membership membership, PurchaseOrder order) {
        OrderHistory history = order.history();
        if (history.has(Kind.CANCELLED)) {
            return display.text(order.came() > 0 ? "purchase.paper.rest-cancelled" : "purchase.paper.cancelled");
        }
        return history.last(Kind.APPROVED)
                .map(step -> display.text(
                        "purchase.paper.approved",
                        step.byName(),
                        display.shortDate(LocalDate.ofInstant(step.at(), membership.zone()))))
                .orElseGet(() -> display.text(
                        history.has(Kind.DECLINED) ? "purchase.paper.declined" : "purchase.paper.not-approved"));
    }

    private List<Fact> facts(Membership membership, PurchaseOrder order, @Nullable Contact contact) {
        LocalDate orderedOn = order.orderedOn();
        LocalDate date = orderedOn == null ? LocalDate.now(clock.withZone(membership.zone())) : orderedOn;
        List<Fact> facts = new ArrayList<>();
        facts.add(fact("purchase.paper.number", membership.code() + "-" + order.number()));
        facts.add(fact("purchase.paper.date", display.date(date)));
        facts.add(fact("purchase.paper.production", membership.productionName()));
        facts.add(fact(
                "purchase.fact.supplier",
                order.supplierName().isEmpty() ? display.text("purchase.paper.nobody") : order.supplierName()));
        if (contact != null) {
            facts.add(fact("purchase.paper.contact", address(contact)));
        }
        facts.add(fact("purchase.fact.delivered-to", display.text("supplier.delivered-to." + order.deliveredTo())));
        if (order.neededBy() != null) {
            facts.add(fact("purchase.fact.needed-by", display.date(order.neededBy())));
        }
        return facts;
    }

    private static String address(Contact contact) {
        return Stream.of(contact.name(), contact.role(), contact.email(), contact.phone())
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private Row row(OrderLine line, Currency currency) {
        String kind = display.text("inventory.kind." + line.kind());
        return new Row(
                line.position(),
                line.capacityBytes() == null
                        ? display.text("purchase.paper.what", line.model(), kind)
                        : display.text(
                                "purchase.paper.what-holds", line.model(), kind, display.size(line.capacityBytes())),
                line.items(),
                line.isHired()
                        ? display.text("purchase.line.hired", line.hireWeeks())
                        : display.text("purchase.line.bought"),
                words.unit(line, currency),
                words.amount(line.costMinorUnits(), currency));
    }

    private Fact fact(String key, String text) {
        return new Fact(display.text(key), text);
    }
}
