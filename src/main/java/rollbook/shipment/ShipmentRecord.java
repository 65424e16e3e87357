package rollbook.shipment;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.production.Signatory;

/** Writes down what happens to shipments. Nothing in it is changed or taken away. */
@Repository
class ShipmentRecord {
    private final JdbcClient jdbc;
    private final Clock clock;

    ShipmentRecord(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Transactional(propagation = Propagation.MANDATORY)
    void ofShipment(Signatory by, UUID shipmentId, ShipmentAct.Kind act, @Nullable Instant expectedBy, String note) {
        add(by, null, shipmentId, act, null, expectedBy, note);
    }

    /** @param linkId by which it was signed for, null if by an account */
    @Transactional(propagation = Propagation.MANDATORY)
    void ofItem(Signatory by, @Nullable UUID linkId, UUID shipmentId, ShipmentAct.Kind act, UUID itemId, String note) {
        add(by, linkId, shipmentId, act, itemId, null, note);
    }

    private void add(
            Signatory by,
            @Nullable UUID linkId,
            UUID shipmentId,
            ShipmentAct.Kind act,
            @Nullable UUID itemId,
            @Nullable Instant expectedBy,
            String note) {
        jdbc.sql("""
                        insert into shipment_act (shipment_id, at, act, item_id, expected_by, note, person_id, by_name, link_id)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .param(shipmentId)
                .param(Timestamp.from(clock.instant()))
                .param(act.name())
                .param(itemId)
                .param(expectedBy == null ? null : Timestamp.from(expectedBy))
                .param(note)
                .param(by.personId())
                .param(by.name())
                .param(linkId)
                .update();
    }
}
