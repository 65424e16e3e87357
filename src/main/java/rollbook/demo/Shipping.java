package rollbook.demo;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.Membership;
import rollbook.shipment.Arrival;
import rollbook.shipment.Arrivals;
import rollbook.shipment.Packing;
import rollbook.shipment.Sending;
import rollbook.shipment.ShipmentDetails;

/** How the demo's media travel: by night courier to the post house, one box an item. Carriers and seals are invented. */
@Component
@Profile("demo")
class Shipping {
    private static final long BOX_GRAMS = 2_300;
    private static final int FIRST_SEAL = 70_201;

    private final MediaItems items;
    private final Packing packing;
    private final Sending sending;
    private final Arrivals arrivals;
    private final Map<UUID, UUID> boxes = new HashMap<>();
    private int seals;

    Shipping(MediaItems items, Packing packing, Sending sending, Arrivals arrivals) {
        this.items = items;
        this.packing = packing;
        this.sending = sending;
        this.arrivals = arrivals;
    }

    void send(Membership by, UUID itemId, UUID toPlaceId, String carrier, Instant expectedBy, String note) {
        MediaItem item = items.get(by.productionId(), itemId);
        String seal = "S-" + (FIRST_SEAL + seals++);
        ShipmentDetails details =
                new ShipmentDetails(item.placeId(), toPlaceId, "", carrier, seal, BOX_GRAMS, note, expectedBy);
        UUID box = packing.pack(by, details, List.of(item));
        sending.send(by, box, expectedBy, 0);
        boxes.put(itemId, box);
    }

    void confirm(Membership by, UUID itemId) {
        arrivals.confirm(by, boxes.get(itemId), List.of(new Arrival(itemId, Arrival.Outcome.ARRIVED, "")));
    }
}
