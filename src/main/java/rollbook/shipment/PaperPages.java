package rollbook.shipment;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.production.Membership;
import rollbook.web.Display;

/** Words everything that stands on the papers of a shipment: a template for a PDF can't ask for it. */
@Component
class PaperPages {
    private final ShipmentPages pages;
    private final Display display;

    PaperPages(ShipmentPages pages, Display display) {
        this.pages = pages;
        this.display = display;
    }

    /** A line of the head: what it is and what it says. */
    record Fact(String name, String value) {}

    /** @param rolls codes of the rolls on it, in words */
    record Item(String code, String kind, String rolls) {}

    /** A roll on an item. */
    record Roll(String item, String roll, String rendition, String size, String verdict, List<String> manifests) {}

    /** @param sum of the bytes that are known */
    record Paper(
            int number,
            String production,
            String state,
            List<Fact> facts,
            List<Item> items,
            List<Roll> rolls,
            String sum) {}

    Paper of(Membership viewer, UUID shipmentId) {
        ShipmentPages.View view = pages.one(viewer, shipmentId);
        Shipment shipment = view.shipment();
        List<SentContent> contents =
                view.rows().stream().flatMap(row -> row.rolls().stream()).toList();
        long bytes = contents.stream()
                .map(SentContent::sizeBytes)
                .filter(size -> size != null)
                .mapToLong(size -> size == null ? 0 : size)
                .sum();
        return new Paper(
                shipment.number(),
                viewer.productionName(),
                shipment.isPacking() ? display.text("shipment.paper.not-sent") : "",
                facts(viewer, shipment),
                view.rows().stream().map(this::item).toList(),
                contents.stream().map(this::roll).toList(),
                display.text(
                        "shipment.paper.sum",
                        view.rows().size(),
                        contents.size(),
                        bytes == 0 ? 0 : 1,
                        display.amount(bytes)));
    }

    private List<Fact> facts(Membership viewer, Shipment shipment) {
        List<Fact> facts = new ArrayList<>();
        add(facts, "production", viewer.productionName() + " (" + viewer.code() + ")");
        add(facts, "from", shipment.fromPlaceName());
        add(
                facts,
                "to",
                shipment.receiver().isEmpty()
                        ? shipment.toPlaceName()
                        : shipment.toPlaceName() + ", " + shipment.receiver());
        add(facts, "carrier", shipment.isHandOver() ? display.text("shipment.no-carrier") : shipment.carrier());
        add(facts, "sent", moment(viewer, shipment.sentAt(), shipment.sentByName()));
        add(
                facts,
                "expected",
                shipment.expectedBy() == null ? "" : display.moment(shipment.expectedBy(), viewer.zone()));
        add(facts, "seals", String.join(", ", shipment.sealNumbers()));
        add(
                facts,
                "weight",
                shipment.weightGrams() == null ? "" : display.text("shipment.kilograms", shipment.kilograms()));
        add(facts, "note", shipment.note());
        return facts;
    }

    private String moment(Membership viewer, java.time.@Nullable Instant at, @Nullable String by) {
        return at == null || by == null ? "" : display.text("shipment.paper.by", display.moment(at, viewer.zone()), by);
    }

    private void add(List<Fact> facts, String what, String value) {
        if (!value.isEmpty()) {
            facts.add(new Fact(display.text("shipment.fact." + what), value));
        }
    }

    private Item item(ShipmentPages.ItemRow row) {
        List<String> codes = row.rolls().stream()
                .map(SentContent::rollCode)
                .map(String::valueOf)
                .distinct()
                .toList();
        return new Item(
                row.item().code(),
                display.text("inventory.kind." + row.item().kind()),
                codes.isEmpty() ? display.text("shipment.paper.empty") : String.join(", ", codes));
    }

    private Roll roll(SentContent content) {
        return new Roll(
                content.itemCode(),
                String.valueOf(content.rollCode()),
                display.text(
                        content.rendition() == null
                                ? "shipment.rendition.ORIGINAL"
                                : "shipment.rendition." + content.rendition()),
                content.sizeBytes() == null ? display.text("web.none") : display.exact(content.sizeBytes()),
                content.verdict() == null
                        ? display.text("web.none")
                        : display.text("web.verdict." + display.verdict(content.verdict())),
                content.manifests());
    }
}
