package rollbook.cost;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import rollbook.forecast.CostToCome;
import rollbook.forecast.Forecasts;
import rollbook.hire.HiredItemCost;
import rollbook.hire.Hires;
import rollbook.inventory.Ownership;
import rollbook.production.CopyPlan;
import rollbook.production.Membership;
import rollbook.purchase.ItemsAtCost;
import rollbook.purchase.ItemsAtCost.ItemAtCost;
import rollbook.purchase.Orders;
import rollbook.purchase.PurchaseOrder;
import rollbook.supplier.Catalogue;
import rollbook.web.Display;

/** Gathers what a production's media cost from its orders, hires, inventory and newest forecast. */
@Component
class CostFacts {
    private final Orders orders;
    private final ItemsAtCost itemsAtCost;
    private final Hires hires;
    private final Catalogue catalogue;
    private final Forecasts forecasts;
    private final CopyPlan plan;
    private final Budgets budgets;
    private final Display display;
    private final Clock clock;

    CostFacts(
            Orders orders,
            ItemsAtCost itemsAtCost,
            Hires hires,
            Catalogue catalogue,
            Forecasts forecasts,
            CopyPlan plan,
            Budgets budgets,
            Display display,
            Clock clock) {
        this.orders = orders;
        this.itemsAtCost = itemsAtCost;
        this.hires = hires;
        this.catalogue = catalogue;
        this.forecasts = forecasts;
        this.plan = plan;
        this.budgets = budgets;
        this.display = display;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public Costs of(Membership viewer) {
        UUID productionId = viewer.productionId();
        LocalDate today = LocalDate.ofInstant(clock.instant(), viewer.zone());
        List<ItemAtCost> items = itemsAtCost.of(productionId);
        List<PurchaseOrder> all = orders.list(productionId);
        OrderCosts ordered = OrderCosts.of(all, items, number -> display.text("cost.source.order", number));
        List<HiredItemCost> hired = hires.costs(productionId, viewer.zone(), today);
        CostToCome toCome = forecasts.costToCome(productionId).orElse(null);
        List<Budget> set = budgets.of(productionId);

        List<CostLine> lines = new ArrayList<>(ordered.lines());
        List<ItemAtCost> bought = boughtWithoutOrder(items, ordered.onlyCounted());
        lines.addAll(registered(bought));
        lines.addAll(hired(hired));
        if (toCome != null) {
            lines.addAll(toCome(toCome, kinds(productionId, toCome, items)));
        }
        CostSheet sheet = new CostSheet(lines, set.isEmpty() ? null : set.get(0).minorUnits());
        return new Costs(
                sheet,
                set,
                toCome,
                Comparison.all(hired, items, catalogue.list(productionId), today),
                ordered.unpriced() + unpriced(bought));
    }

    private static List<CostLine> registered(List<ItemAtCost> bought) {
        return bought.stream()
                .filter(item -> item.costMinorUnits() != null)
                .map(item -> new CostLine(
                        Stage.SPENT,
                        CostKind.of(item.kind()),
                        false,
                        Objects.requireNonNull(item.costMinorUnits()),
                        item.model(),
                        item.code(),
                        "media/" + item.id(),
                        null))
                .toList();
    }

    private static int unpriced(List<ItemAtCost> bought) {
        return (int)
                bought.stream().filter(item -> item.costMinorUnits() == null).count();
    }

    /**
     * What was bought and came with no order. Of a model of which items came that were only counted, so many that were
     * registered by hand are taken for those.
     */
    private static List<ItemAtCost> boughtWithoutOrder(List<ItemAtCost> items, Map<Model, Integer> onlyCounted) {
        Map<Model, Integer> counted = new HashMap<>(onlyCounted);
        return items.stream()
                .filter(item -> item.ownership() == Ownership.BOUGHT && item.lineId() == null)
                .filter(item -> !takeOne(counted, new Model(item.kind(), item.model())))
                .toList();
    }

    private static boolean takeOne(Map<Model, Integer> counted, Model model) {
        boolean some = counted.getOrDefault(model, 0) > 0;
        if (some) {
            counted.merge(model, -1, Integer::sum);
        }
        return some;
    }

    private static List<CostLine> hired(List<HiredItemCost> hired) {
        List<CostLine> lines = new ArrayList<>();
        for (HiredItemCost item : hired) {
            add(lines, Stage.SPENT, item, item.accruedMinorUnits());
            add(lines, Stage.COMMITTED, item, item.committedMinorUnits() - item.accruedMinorUnits());
        }
        return lines;
    }

    private static void add(List<CostLine> lines, Stage stage, HiredItemCost item, long minorUnits) {
        if (minorUnits > 0) {
            lines.add(new CostLine(
                    stage,
                    CostKind.of(item.kind()),
                    true,
                    minorUnits,
                    item.code(),
                    item.agreementCode().isEmpty() ? item.code() : item.agreementCode(),
                    "hire",
                    stage == Stage.SPENT ? item.endedOn() : item.dueOn()));
        }
    }

    /** Of the media that each leg's pool has; only a pool without any is looked up in the copy plan. */
    private Map<UUID, CostKind> kinds(UUID productionId, CostToCome toCome, List<ItemAtCost> items) {
        Map<UUID, CostKind> kinds = new HashMap<>();
        items.stream()
                .filter(item -> item.legId() != null)
                .forEach(item -> kinds.put(item.legId(), CostKind.of(item.kind())));
        if (toCome.lines().stream().anyMatch(line -> !kinds.containsKey(line.legId()))) {
            plan.legs(productionId).forEach(leg -> kinds.put(leg.id(), CostKind.of(leg.mediaKind())));
        }
        return kinds;
    }

    private List<CostLine> toCome(CostToCome toCome, Map<UUID, CostKind> kinds) {
        List<CostLine> lines = new ArrayList<>();
        for (CostToCome.Line line : toCome.lines()) {
            CostKind kind = kinds.get(line.legId());
            if (kind != null && line.minorUnits() > 0) {
                lines.add(toCome(kind, line.hired(), line.minorUnits(), line.legName()));
            }
        }
        if (toCome.deliveriesMinorUnits() > 0) {
            lines.add(toCome(
                    CostKind.DELIVERY, false, toCome.deliveriesMinorUnits(), display.text("cost.kind.DELIVERY")));
        }
        return lines;
    }

    private CostLine toCome(CostKind kind, boolean hired, long minorUnits, String what) {
        return new CostLine(
                Stage.TO_COME, kind, hired, minorUnits, what, display.text("cost.source.forecast"), "storage", null);
    }
}
