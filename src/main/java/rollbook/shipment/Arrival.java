package rollbook.shipment;

import java.util.UUID;

/** What a receiver says of an item. */
public record Arrival(UUID itemId, Outcome outcome, String note) {
    /** The choices of a receiver. */
    public enum Outcome {
        ARRIVED(ShipmentAct.Kind.ARRIVED),
        SEAL_DAMAGED(ShipmentAct.Kind.SEAL_DAMAGED),
        MISSING(ShipmentAct.Kind.MISSING);

        private final ShipmentAct.Kind act;

        Outcome(ShipmentAct.Kind act) {
            this.act = act;
        }

        ShipmentAct.Kind act() {
            return act;
        }

        /** The item's state from then on. */
        ShipmentItem.State state() {
            return this == MISSING ? ShipmentItem.State.MISSING : ShipmentItem.State.ARRIVED;
        }
    }
}
