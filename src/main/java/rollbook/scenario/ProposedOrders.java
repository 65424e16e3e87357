package rollbook.scenario;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.ordering.Hire;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.purchase.NewOrder;
import rollbook.purchase.Orders;
import rollbook.purchase.PurchaseOrder;
import rollbook.supplier.Catalogue;
import rollbook.supplier.CatalogueItem;
import rollbook.supplier.DeliveredTo;
import rollbook.web.Display;

/**
 * Makes orders of what a scenario adds: one for each supplier that offers some of it for hire, and one of what is in
 * nobody's catalogue, in words.
 */
@Component
class ProposedOrders {
    private final Orders orders;
    private final Catalogue catalogue;
    private final CopyPlan plan;
    private final Display display;

    ProposedOrders(Orders orders, Catalogue catalogue, CopyPlan plan, Display display) {
        this.orders = orders;
        this.catalogue = catalogue;
        this.plan = plan;
        this.display = display;
    }

    /** @return the orders, at least one */
    List<UUID> propose(Membership by, OrderProposal proposal) {
        List<CatalogueItem> offered = catalogue.list(by.productionId());
        Map<Optional<UUID>, List<NewOrder.Line>> bySupplier = new LinkedHashMap<>();
        for (ProposalLine line : proposal.lines()) {
            CatalogueItem item = item(line, offered);
            bySupplier
                    .computeIfAbsent(Optional.ofNullable(item).map(CatalogueItem::supplierId), any -> new ArrayList<>())
                    .add(item == null ? inWords(by, line) : ofCatalogue(line, item));
        }
        return bySupplier.values().stream()
                .map(lines -> orders.propose(
                        by,
                        new NewOrder(
                                DeliveredTo.SET,
                                null,
                                proposal.neededBy(),
                                "",
                                PurchaseOrder.Source.SCENARIO,
                                proposal.scenarioName(),
                                lines)))
                .toList();
    }

    /** What is for hire of that kind and model, where it is the only one; null else, and for what is bought. */
    private static @Nullable CatalogueItem item(ProposalLine line, List<CatalogueItem> offered) {
        List<CatalogueItem> fitting = line.hireWeeks() == null
                ? List.of()
                : offered.stream().filter(item -> fits(item, line)).toList();
        return fitting.size() == 1 ? fitting.get(0) : null;
    }

    private static boolean fits(CatalogueItem item, ProposalLine line) {
        return !item.archived()
                && item.details().kind() == kind(line)
                && (line.what().isEmpty() || item.details().model().equalsIgnoreCase(line.what()))
                && item.prices().entered().stream().anyMatch(price -> price.hire() != null);
    }

    private static MediaKind kind(ProposalLine line) {
        return switch (line.kind()) {
            case CARDS -> MediaKind.CARD;
            case READERS -> MediaKind.READER;
            case ADAPTERS -> MediaKind.ADAPTER;
            case DRIVES -> MediaKind.DRIVE;
        };
    }

    private static NewOrder.Line ofCatalogue(ProposalLine line, CatalogueItem item) {
        int shortest = item.prices().entered().stream()
                .flatMap(price -> Optional.ofNullable(price.hire()).stream())
                .mapToInt(Hire::minimumWeeks)
                .max()
                .orElse(1);
        return NewOrder.Line.ofCatalogue(item.id(), line.count(), Math.max(shortest, weeks(line)), null, null);
    }

    private NewOrder.Line inWords(Membership by, ProposalLine line) {
        Leg leg = line.kind() != ProposalLine.Kind.DRIVES
                ? null
                : plan.legs(by.productionId()).stream()
                        .filter(one -> one.name().equals(line.what()))
                        .findFirst()
                        .orElse(null);
        return NewOrder.Line.inWords(
                leg == null ? kind(line) : leg.mediaKind(),
                display.text("scenario.to-order." + line.kind(), line.what()),
                line.count(),
                line.hireWeeks(),
                unit(line),
                leg == null ? null : leg.id());
    }

    /** Of one item and week; null if nobody said or it doesn't come out even. */
    private static @Nullable Long unit(ProposalLine line) {
        long units = (long) line.count() * weeks(line);
        return line.costMinorUnits() == null || line.costMinorUnits() % units != 0
                ? null
                : Long.valueOf(line.costMinorUnits() / units);
    }

    private static int weeks(ProposalLine line) {
        return line.hireWeeks() == null ? 1 : line.hireWeeks();
    }
}
