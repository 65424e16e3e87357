package rollbook.shipment;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import rollbook.inventory.CardState;
import rollbook.verification.RollCopies.CopyAt;
import rollbook.web.Display;

/** What stands first on the pages of shipments, and what they warn of, in plain language. */
@Component
class ShipmentWords {
    private static final int NAMED = 6;

    private final Display display;

    ShipmentWords(Display display) {
        this.display = display;
    }

    /** Of the list: what is late, what is under way, what is being packed. */
    String sentence(List<Shipment> all, Instant now) {
        if (all.isEmpty()) {
            return display.text("shipment.list.none");
        }
        List<Shipment> late = all.stream().filter(one -> one.isLate(now)).toList();
        List<Shipment> missing = all.stream().filter(one -> one.missing() > 0).toList();
        long underWay = all.stream().filter(Shipment::awaitsReceipt).count();
        long packing = all.stream().filter(Shipment::isPacking).count();
        List<String> parts = new ArrayList<>();
        if (!late.isEmpty()) {
            parts.add(display.text("shipment.list.late", late.size(), numbers(late)));
        }
        if (!missing.isEmpty()) {
            parts.add(display.text("shipment.list.missing", missing.size(), numbers(missing)));
        }
        parts.add(display.text("shipment.list.under-way", underWay));
        if (packing > 0) {
            parts.add(display.text("shipment.list.packing", packing));
        }
        return String.join(" ", parts);
    }

    private static String numbers(List<Shipment> some) {
        return some.stream().map(one -> String.valueOf(one.number())).sorted().collect(Collectors.joining(", "));
    }

    /** Of one: how far it has come. */
    String sentence(Shipment shipment, ZoneId zone, Instant now) {
        String expected = shipment.expectedBy() == null ? "" : display.moment(shipment.expectedBy(), zone);
        String key = shipment.isLate(now) ? "LATE" : shipment.state().name();
        return display.text(
                "shipment.sentence." + key,
                shipment.items(),
                shipment.toPlaceName(),
                shipment.isHandOver() ? String.valueOf(shipment.sentByName()) : shipment.carrier(),
                expected,
                shipment.arrived(),
                shipment.open(),
                shipment.lost(),
                shipment.missing(),
                shipment.isHandOver() ? 1 : 0);
    }

    /** What everybody must know before it leaves. */
    List<String> warnings(List<TravelRisks.Risk> risks, List<ShipmentItem> items, List<String> clearedMedia) {
        List<String> warnings = new ArrayList<>();
        risks.forEach(risk -> warnings.add(display.text(
                "shipment.risk." + risk.kind(),
                risk.rolls().size(),
                named(risk.rolls()),
                named(risk.items()),
                named(risk.cards()),
                risk.items().size())));
        clearedMedia.forEach(code -> warnings.add(display.text("shipment.risk.cleared", code)));
        items.stream()
                .filter(item -> item.cardState() == CardState.CLEAR_TO_ERASE)
                .forEach(item -> warnings.add(display.text("shipment.risk.cleared-card", item.code())));
        return warnings;
    }

    /** What is left of a roll. */
    String left(LossLine line) {
        return display.text(
                "shipment.left." + line.left(),
                line.rollCode(),
                line.cardCode(),
                places(line.proven()),
                places(line.unproven()),
                line.unproven().size());
    }

    /** Of a page that asks what would be lost, or says what is. */
    String loss(List<LossLine> lines) {
        List<String> bare =
                lines.stream().filter(LossLine::isBare).map(LossLine::rollCode).toList();
        return lines.isEmpty()
                ? display.text("shipment.loss.no-rolls")
                : bare.isEmpty()
                        ? display.text("shipment.loss.all-proven", lines.size())
                        : display.text("shipment.loss.bare", bare.size(), named(bare), lines.size());
    }

    private String places(List<CopyAt> copies) {
        return copies.stream()
                .map(copy -> display.text("shipment.left.at", copy.itemCode(), copy.placeName()))
                .distinct()
                .collect(Collectors.joining(", "));
    }

    private String named(List<String> codes) {
        String first = String.join(", ", codes.subList(0, Math.min(NAMED, codes.size())));
        return codes.size() <= NAMED ? first : display.text("shipment.and-more", first, codes.size() - NAMED);
    }
}
