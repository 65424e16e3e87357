package rollbook.cost;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import rollbook.forecast.CostToCome;
import rollbook.forecast.Forecasts;
import rollbook.hire.HiredItemCost;
import rollbook.hire.Hires;
import rollbook.inventory.MediaFilter;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaList;
import rollbook.inventory.Ownership;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.purchase.Orders;
import rollbook.purchase.ReceivedItems;
import rollbook.purchase.ReceivedItems.ReceivedItem;
import rollbook.supplier.Catalogue;
import rollbook.web.Display;

/** Gathers what a production's media cost from its orders, hires, inventory and newest forecast. */
@Component
class CostFacts {
    private final Orders orders;
    private final ReceivedItems receivedItems;
    private final Hires hires;
    private final MediaList media;
    private final Catalogue catalogue;
    private final Forecasts forecasts;
    private final CopyPlan plan;
    private final Budgets budgets;
    private final Display display;
    private final Clock clock;

    CostFacts(
            Orders orders,
            ReceivedItems receivedItems,
            Hires hires,
            MediaList media,
            Catalogue catalogue,
            Forecasts forecasts,
            CopyPlan plan,
            Budgets budgets,
            Display display,
            Clock clock) {
        this.orders = orders;
        this.receivedItems = receivedItems;
        this.hires = hires;
        this.media = media;
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
        List<ReceivedItem> received = receivedItems.of(productionId);
        OrderCosts ordered =
                OrderCosts.of(orders.list(productionId), received, number -> display.text("cost.source.order", number));
        Map<UUID, MediaItem> items =
                media.items(productionId, MediaFilter.of(null, MediaFilter.State.ALL.name(), null)).stream()
                        .collect(Collectors.toMap(MediaItem::id, Function.identity()));
        List<HiredItemCost> hired = hires.costs(productionId, today);
        CostToCome toCome = forecasts.costToCome(productionId).orElse(null);
        List<Budget> set = budgets.of(productionId);

        List<CostLine> lines = new ArrayList<>(ordered.lines());
        List<MediaItem> bought = boughtWithoutOrder(items, received, ordered.onlyCounted());
        lines.addAll(registered(bought));
        lines.addAll(hired(hired));
        if (toCome != null) {
            lines.addAll(toCome(productionId, toCome));
        }
        CostSheet sheet = new CostSheet(lines, set.isEmpty() ? null : set.get(0).minorUnits());
        return new Costs(
                sheet,
                set,
                toCome,
                Comparison.all(hired, items, catalogue.list(productionId), today),
                ordered.unpriced() + unpriced(bought));
    }

    private static List<CostLine> registered(List<MediaItem> bought) {
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

    private static int unpriced(List<MediaItem> bought) {
        return (int)
                bought.stream().filter(item -> item.costMinorUnits() == null).count();
    }

    /**
     * What was bought and came with no order. Of a model of which items came that were only counted, so many that were
     * registered by hand are taken for those.
     */
    private static List<MediaItem> boughtWithoutOrder(
            Map<UUID, MediaItem> items, List<ReceivedItem> received, Map<Model, Integer> onlyCounted) {
        Set<UUID> ordered = received.stream().map(ReceivedItem::itemId).collect(Collectors.toSet());
        Map<Model, Integer> counted = new HashMap<>(onlyCounted);
        return items.values().stream()
                .filter(item -> item.ownership() == Ownership.BOUGHT && !ordered.contains(item.id()))
                .sorted(Comparator.comparing(MediaItem::code))
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

    private List<CostLine> toCome(UUID productionId, CostToCome toCome) {
        Map<UUID, CostKind> kinds = plan.legs(productionId).stream()
                .collect(Collectors.toMap(Leg::id, leg -> CostKind.of(leg.mediaKind())));
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
