package rollbook.shipment;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.manifest.Verdict;
import rollbook.production.Membership;
import rollbook.verification.MediaContents;
import rollbook.verification.RollCopies;

/** Gathers what the pages of shipments show. */
@Component
class ShipmentPages {
    private final Shipments shipments;
    private final ReceiptLinks links;
    private final MediaContents contents;
    private final ShipmentWords words;
    private final Clock clock;

    ShipmentPages(Shipments shipments, ReceiptLinks links, MediaContents contents, ShipmentWords words, Clock clock) {
        this.shipments = shipments;
        this.links = links;
        this.contents = contents;
        this.words = words;
        this.clock = clock;
    }

    /** An item with what is on it. */
    record ItemRow(ShipmentItem item, List<SentContent> contents) {
        public List<SentContent> rolls() {
            return contents.stream().filter(on -> on.rollId() != null).toList();
        }

        public int count() {
            return rolls().size();
        }

        public long proven() {
            return rolls().stream().filter(on -> on.verdict() == Verdict.PROVEN).count();
        }
    }

    /**
     * @param rows what is in it; as it was when it was sent, or as it is now while it is being packed
     * @param warnings what everybody must know before it leaves, or of what is under way
     * @param losses what is left of the rolls on items that are lost, with a sentence each
     * @param link the newest, if it still means anything
     */
    record View(
            Shipment shipment,
            String sentence,
            List<ItemRow> rows,
            List<String> warnings,
            LossTable losses,
            List<ShipmentAct> acts,
            @Nullable ReceiptLink link,
            boolean late) {

        public List<ItemRow> lost() {
            return rows.stream()
                    .filter(row -> row.item().state() == ShipmentItem.State.LOST)
                    .toList();
        }
    }

    /** @throws rollbook.web.NotFoundException if this production has no such shipment */
    View one(Membership viewer, UUID shipmentId) {
        UUID production = viewer.productionId();
        Shipment shipment = shipments.get(production, shipmentId);
        List<ShipmentItem> items = shipments.items(production, shipmentId);
        Set<UUID> concerned = items.stream()
                .filter(item -> item.state() != ShipmentItem.State.ARRIVED)
                .map(ShipmentItem::itemId)
                .collect(Collectors.toSet());
        List<RollCopies> rolls = contents.rollsOn(production, concerned);
        Instant now = clock.instant();
        return new View(
                shipment,
                words.sentence(shipment, viewer.zone(), now),
                rows(production, shipment, items, rolls),
                warnings(production, items, rolls),
                LossTable.of(losses(items, rolls)),
                shipments.acts(production, shipmentId),
                links.ofShipment(production, shipmentId)
                        .filter(link -> link.opens(now) || link.isUsed())
                        .orElse(null),
                shipment.isLate(now));
    }

    private List<ItemRow> rows(UUID production, Shipment shipment, List<ShipmentItem> items, List<RollCopies> rolls) {
        Map<UUID, List<SentContent>> sent = shipment.isPacking()
                ? Map.of()
                : shipments.sent(production, shipment.id()).stream()
                        .collect(Collectors.groupingBy(SentContent::itemId));
        return items.stream()
                .map(item -> new ItemRow(
                        item,
                        shipment.isPacking()
                                ? SentContent.of(item, rolls)
                                : sent.getOrDefault(item.itemId(), List.of())))
                .toList();
    }

    private List<String> warnings(UUID production, List<ShipmentItem> items, List<RollCopies> rolls) {
        Map<UUID, String> travelling = items.stream()
                .filter(item -> item.state() == ShipmentItem.State.PACKED || item.isOpen())
                .collect(Collectors.toMap(ShipmentItem::itemId, ShipmentItem::code));
        if (travelling.isEmpty()) {
            return List.of();
        }
        List<RollCopies> concerned = rolls.stream()
                .filter(roll -> !roll.on(travelling.keySet()).isEmpty() || roll.isOnCardAmong(travelling.keySet()))
                .toList();
        Set<UUID> cleared = contents.cleared(production);
        List<ShipmentItem> open = items.stream()
                .filter(item -> travelling.containsKey(item.itemId()))
                .toList();
        return words.warnings(
                TravelRisks.of(travelling, concerned),
                open,
                open.stream()
                        .filter(item -> cleared.contains(item.itemId()))
                        .map(ShipmentItem::code)
                        .toList());
    }

    private Map<LossLine, String> losses(List<ShipmentItem> items, List<RollCopies> rolls) {
        Set<UUID> lost = items.stream()
                .filter(item -> item.state() == ShipmentItem.State.LOST && !item.isFoundAgain())
                .map(ShipmentItem::itemId)
                .collect(Collectors.toSet());
        return lines(lost, rolls);
    }

    /** What would be left of the rolls on some items, with a sentence each, the worst first. */
    Map<LossLine, String> lines(UUID productionId, Set<UUID> items) {
        return lines(items, contents.rollsOn(productionId, items));
    }

    private Map<LossLine, String> lines(Set<UUID> items, List<RollCopies> rolls) {
        List<RollCopies> concerned = rolls.stream()
                .filter(roll -> !roll.on(items).isEmpty() || roll.isOnCardAmong(items))
                .toList();
        Map<LossLine, String> lines = new LinkedHashMap<>();
        LossLine.of(items, concerned).forEach(line -> lines.put(line, words.left(line)));
        return lines;
    }

    String lossSentence(Map<LossLine, String> lines) {
        return words.loss(new ArrayList<>(lines.keySet()));
    }
}
