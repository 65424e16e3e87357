package rollbook.purchase;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.quantity.Money;
import rollbook.supplier.Catalogue;
import rollbook.supplier.CatalogueItem;
import rollbook.supplier.MediaSupplier;
import rollbook.supplier.SupplierWords;
import rollbook.supplier.Suppliers;
import rollbook.web.Choice;
import rollbook.web.Display;

/** What can be chosen in an order's form, and what the form begins with. */
@Component
class OrderFormPages {
    private final Catalogue catalogue;
    private final Suppliers suppliers;
    private final CopyPlan plan;
    private final OrderAdvisor advisor;
    private final SupplierWords words;
    private final Display display;
    private final Clock clock;

    OrderFormPages(
            Catalogue catalogue,
            Suppliers suppliers,
            CopyPlan plan,
            OrderAdvisor advisor,
            SupplierWords words,
            Display display,
            Clock clock) {
        this.catalogue = catalogue;
        this.suppliers = suppliers;
        this.plan = plan;
        this.advisor = advisor;
        this.words = words;
        this.display = display;
        this.clock = clock;
    }

    /** What the form is for. */
    String sentence(Membership membership, @Nullable UUID flag) {
        return flag == null
                ? display.text("purchase.form.sentence")
                : display.text(
                        "purchase.form.sentence.flag",
                        plan.leg(membership.productionId(), flag).name());
    }

    /** The advice about a leg's pool, or an item of a catalogue, or nothing yet. */
    OrderForm beginning(Membership membership, @Nullable UUID legId, @Nullable UUID itemId) {
        if (legId != null) {
            plan.leg(membership.productionId(), legId);
            OrderAdvisor.Advice advice =
                    advisor.forLeg(membership.productionId(), legId).orElse(null);
            return OrderForm.of(
                    new LineForm(
                            null,
                            advice == null ? null : advice.itemId(),
                            advice == null ? null : advice.items(),
                            null,
                            null,
                            legId,
                            false),
                    advice,
                    legId);
        } else if (itemId != null) {
            CatalogueItem item = catalogue.get(membership.productionId(), itemId);
            return OrderForm.of(
                    new LineForm(null, itemId, item.details().packSize(), null, null, null, false), null, null);
        }
        return OrderForm.of(LineForm.blank(), null, null);
    }

    /**
     * What a form shows besides what is typed.
     *
     * @param items of all suppliers
     */
    record Choices(List<Choice> items, List<Choice> legs, OrderFormChecks checks) {}

    Choices choices(Membership membership, @Nullable PurchaseOrder kept) {
        Currency currency = Currency.getInstance(membership.currency());
        LocalDate today = LocalDate.ofInstant(clock.instant(), membership.zone());
        List<CatalogueItem> items = catalogue.list(membership.productionId());
        Map<UUID, String> names = suppliers.list(membership.productionId()).stream()
                .collect(Collectors.toMap(MediaSupplier::id, MediaSupplier::name));
        List<Leg> legs = plan.legs(membership.productionId());
        return new Choices(
                items.stream()
                        .filter(item -> !item.archived() || kept != null && has(kept, item))
                        .sorted(Comparator.comparing(
                                item -> names.get(item.supplierId()), String.CASE_INSENSITIVE_ORDER))
                        .map(item -> new Choice(
                                item.id().toString(), text(item, names.get(item.supplierId()), today, currency)))
                        .toList(),
                legs.stream()
                        .map(leg -> new Choice(leg.id().toString(), leg.name()))
                        .toList(),
                new OrderFormChecks(
                        items.stream().collect(Collectors.toMap(CatalogueItem::id, Function.identity())),
                        names,
                        legs.stream().collect(Collectors.toMap(Leg::id, Function.identity())),
                        kept,
                        Money.of(membership.currency()),
                        today));
    }

    private static boolean has(PurchaseOrder order, CatalogueItem item) {
        return order.lines().stream().anyMatch(line -> item.id().equals(line.catalogueItemId()));
    }

    private String text(CatalogueItem item, String supplier, LocalDate today, Currency currency) {
        Long capacity = item.details().capacityBytes();
        return display.text(
                "purchase.form.choice",
                supplier,
                item.details().model(),
                capacity == null ? "" : ", " + display.size(capacity),
                item.prices()
                        .on(today)
                        .map(price -> words.price(price, currency))
                        .orElse(display.text("purchase.form.choice.no-price")),
                item.details().packSize());
    }
}
