package rollbook.shipment;

import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.stereotype.Component;
import rollbook.production.TypedCode;

/** Shipment 3. */
@Component
class ShipmentCode implements TypedCode {
    private static final Pattern CODE = Pattern.compile("(?i)shipment[\\s-]*0*(\\d{1,6})");

    private final Shipments shipments;

    ShipmentCode(Shipments shipments) {
        this.shipments = shipments;
    }

    @Override
    public Optional<String> page(UUID productionId, String typed) {
        Matcher code = CODE.matcher(typed);
        return code.matches()
                ? shipments
                        .findByNumber(productionId, Integer.parseInt(code.group(1)))
                        .map(id -> "shipments/" + id)
                : Optional.empty();
    }
}
