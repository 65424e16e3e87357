package rollbook.purchase;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;
import rollbook.ordering.Hire;
import rollbook.production.Leg;
import rollbook.quantity.Money;
import rollbook.supplier.CatalogueItem;
import rollbook.supplier.Price;

/**
 * What a single field of an order's form doesn't tell.
 *
 * @param items of all catalogues, by their id
 * @param supplierNames by the supplier
 * @param legs by their id
 * @param kept the order that is changed; null for a new one
 */
record OrderFormChecks(
        Map<UUID, CatalogueItem> items,
        Map<UUID, String> supplierNames,
        Map<UUID, Leg> legs,
        @Nullable PurchaseOrder kept,
        Money money,
        LocalDate today) {
    /** Beyond this it is a slip of the pen, and sums of orders stay far from the largest whole number. */
    private static final BigDecimal MOST = BigDecimal.valueOf(1_000_000_000_000L);

    /** Only in a form without errors. */
    void look(OrderForm form, BindingResult result) {
        if (form.deliveryPrice() != null && !money.canPay(form.deliveryPrice())) {
            result.rejectValue("deliveryPrice", "purchase.form.too-fine");
        }
        BigDecimal total = BigDecimal.ZERO;
        UUID supplier = null;
        int ordered = 0;
        for (int i = 0; i < form.lines().size(); i++) {
            LineForm line = form.lines().get(i);
            if (line.isNothing()) {
                continue;
            }
            ordered++;
            Field field = new Field("lines[" + i + "].", result);
            CatalogueItem item = item(line, field);
            if (line.items() == null) {
                field.reject("items", "purchase.form.items.missing");
            }
            if (line.price() != null && !money.canPay(line.price())) {
                field.reject("price", "purchase.form.too-fine");
            }
            if (item != null && supplier != null && !supplier.equals(item.supplierId())) {
                field.reject(
                        "item",
                        "purchase.form.item.other-supplier",
                        supplierNames.get(item.supplierId()),
                        supplierNames.get(supplier));
            } else if (item != null) {
                supplier = item.supplierId();
                terms(line, item, field);
            }
            leg(line, item, field);
            total = total.add(cost(line, item));
        }
        if (ordered == 0) {
            result.rejectValue("lines[0].item", "purchase.form.nothing");
        }
        if (total.compareTo(MOST) > 0) {
            result.reject("purchase.form.too-much");
        }
    }

    private record Field(String line, BindingResult result) {
        void reject(String name, String key, Object... args) {
            result.rejectValue(line + name, key, args, null);
        }
    }

    /** Null if the line is in no catalogue, or in none that there is. */
    private @Nullable CatalogueItem item(LineForm line, Field field) {
        OrderLine before = kept == null ? null : kept.line(line.id());
        if (line.item() == null) {
            if (before == null || before.catalogueItemId() != null) {
                field.reject("item", "purchase.form.item.missing");
            }
            return null;
        }
        CatalogueItem item = items.get(line.item());
        boolean was = before != null && line.item().equals(before.catalogueItemId());
        if (item == null || item.archived() && !was) {
            field.reject("item", "purchase.form.item.unknown");
            return null;
        }
        return item;
    }

    /** Whether it is to be had that way. */
    private void terms(LineForm line, CatalogueItem item, Field field) {
        Price price = item.prices().on(today).orElse(null);
        Hire hire = price == null ? null : price.hire();
        int pack = item.details().packSize();
        if (line.weeks() == null) {
            if (line.price() == null && (price == null || price.itemMinorUnits() == null)) {
                field.reject(
                        hire == null ? "price" : "weeks",
                        hire == null ? "purchase.form.price.unknown" : "purchase.form.weeks.only-hire");
            }
            if (line.items() != null && line.items() % pack != 0) {
                int more = line.items() + pack - line.items() % pack;
                field.reject("items", "purchase.form.items.packs", pack, more);
            }
        } else if (hire == null && line.price() == null) {
            field.reject("price", "purchase.form.price.no-hire");
        } else if (hire != null && hire.minimumWeeks() > line.weeks()) {
            field.reject("weeks", "purchase.form.weeks.too-few", hire.minimumWeeks());
        }
    }

    private void leg(LineForm line, @Nullable CatalogueItem item, Field field) {
        if (line.leg() == null) {
            return;
        }
        Leg leg = legs.get(line.leg());
        if (leg == null) {
            field.reject("leg", "purchase.form.leg.unknown");
        } else if (item != null && item.details().kind() != leg.mediaKind()) {
            field.reject("leg", "purchase.form.leg.other-kind", leg.name());
        }
    }

    private BigDecimal cost(LineForm line, @Nullable CatalogueItem item) {
        boolean hired = line.weeks() != null;
        Long ofCatalogue = item == null ? null : OrderLines.unit(item, hired, today);
        BigDecimal unit =
                line.price() != null ? line.price() : ofCatalogue == null ? BigDecimal.ZERO : money.amount(ofCatalogue);
        return unit.multiply(BigDecimal.valueOf(Objects.requireNonNullElse(line.items(), 0)))
                .multiply(BigDecimal.valueOf(Objects.requireNonNullElse(line.weeks(), 1)));
    }
}
