package rollbook.shipment;

import jakarta.validation.constraints.Size;
import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.web.Typed;

/**
 * A shipment as somebody writes it.
 *
 * @param items codes and runs of codes
 * @param weight in kilograms
 * @param expectedBy in the production's zone
 */
record ShipmentForm(
        @Size(max = 8000) String items,
        @Nullable UUID fromPlaceId,
        @Nullable UUID toPlaceId,
        @Size(max = 120) String receiver,
        @Size(max = 120) String carrier,
        @Nullable LocalDateTime expectedBy,
        @Size(max = 1000) String seals,
        @Size(max = 12) String weight,
        @Size(max = 1000) String note,
        int version) {
    private static final int GRAMS_DIGITS = 3;

    ShipmentForm {
        items = Typed.text(items);
        receiver = Typed.text(receiver);
        carrier = Typed.text(carrier);
        seals = Typed.text(seals);
        weight = Typed.text(weight);
        note = Typed.text(note);
    }

    static ShipmentForm blank(String items, @Nullable UUID from) {
        return new ShipmentForm(items, from, null, "", "", null, "", "", "", 0);
    }

    static ShipmentForm of(Shipment shipment, List<ShipmentItem> items, ZoneId zone) {
        return new ShipmentForm(
                items.stream().map(ShipmentItem::code).collect(Collectors.joining("\n")),
                shipment.fromPlaceId(),
                shipment.toPlaceId(),
                shipment.receiver(),
                shipment.carrier(),
                shipment.expectedBy() == null ? null : LocalDateTime.ofInstant(shipment.expectedBy(), zone),
                String.join("\n", shipment.sealNumbers()),
                shipment.kilograms(),
                shipment.note(),
                shipment.version());
    }

    /** Whether the weight is left out or can be read. */
    boolean isWeightReadable() {
        return weight.isEmpty() || weight.matches("\\d{1,5}([.,]\\d{1,3})?") && grams() != 0;
    }

    /** Null if it is left out. */
    @Nullable
    Long grams() {
        return weight.isEmpty()
                ? null
                : new BigDecimal(weight.replace(',', '.'))
                        .movePointRight(GRAMS_DIGITS)
                        .longValueExact();
    }
}
