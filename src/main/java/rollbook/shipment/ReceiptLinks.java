package rollbook.shipment;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.production.Signatory;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;
import rollbook.web.Secret;

/**
 * The secret addresses at which receivers without an account confirm. A shipment has one at a time; it serves once, expires,
 * and can be revoked.
 */
@Service
class ReceiptLinks {
    static final Duration VALID_FOR = Duration.ofDays(14);
    /** So long its page still says that it was confirmed: whoever presses twice is told so. */
    private static final Duration TOLD_FOR = VALID_FOR;

    private static final String LINKS = """
            select l.id, s.production_id, l.shipment_id, l.made_at, p.display_name as made_by_name, l.expires_at, l.revoked_at, l.used_at,
                   l.used_by_name
            from shipment_link l join shipment_shipment s on s.id = l.shipment_id join people_person p on p.id = l.made_by
            """;

    private final JdbcClient jdbc;
    private final Shipments shipments;
    private final Arrivals arrivals;
    private final AuditTrail trail;
    private final Clock clock;

    ReceiptLinks(JdbcClient jdbc, Shipments shipments, Arrivals arrivals, AuditTrail trail, Clock clock) {
        this.jdbc = jdbc;
        this.shipments = shipments;
        this.arrivals = arrivals;
        this.trail = trail;
        this.clock = clock;
    }

    /** The newest link of a shipment, whatever became of it. */
    Optional<ReceiptLink> ofShipment(UUID productionId, UUID shipmentId) {
        return jdbc.sql(LINKS + " where s.production_id = ? and l.shipment_id = ? order by l.made_at desc limit 1")
                .params(productionId, shipmentId)
                .query(ReceiptLink.class)
                .optional();
    }

    /**
     * Makes an address; the one before it leads nowhere from then on.
     *
     * @return the secret, told here once and kept nowhere
     * @throws Refusal if nothing of the shipment is under way
     */
    @Transactional
    public Secret make(Membership by, UUID shipmentId) {
        Shipment shipment = shipments.lock(by.productionId(), shipmentId);
        if (!shipment.awaitsReceipt()) {
            throw new Refusal("shipment.refused.not-under-way", shipment.number());
        }
        close(shipmentId);
        Secret secret = Secret.fresh();
        Instant now = clock.instant();
        jdbc.sql("""
                        insert into shipment_link (id, shipment_id, secret_sha256, made_at, made_by, expires_at)
                        values (?, ?, ?, ?, ?, ?)
                        """)
                .param(UUID.randomUUID())
                .param(shipmentId)
                .param(secret.sha256())
                .param(Timestamp.from(now))
                .param(by.personId())
                .param(Timestamp.from(now.plus(VALID_FOR)))
                .update();
        trail.add(by.act("shipment.link-made", "shipment", String.valueOf(shipment.number()), ""));
        return secret;
    }

    @Transactional
    public void revoke(Membership by, UUID shipmentId) {
        Shipment shipment = shipments.lock(by.productionId(), shipmentId);
        if (close(shipmentId) == 0) {
            throw new Refusal("shipment.refused.no-link", shipment.number());
        }
        trail.add(by.act("shipment.link-revoked", "shipment", String.valueOf(shipment.number()), ""));
    }

    private int close(UUID shipmentId) {
        return jdbc.sql(
                        "update shipment_link set revoked_at = ? where shipment_id = ? and revoked_at is null and used_at is null")
                .params(Timestamp.from(clock.instant()), shipmentId)
                .update();
    }

    /** The link of a secret, if it opens its shipment or has served and may still say so; empty for every other, for whatever reason. */
    Optional<ReceiptLink> of(Secret secret) {
        Instant now = clock.instant();
        return jdbc.sql(LINKS + " where l.secret_sha256 = ?")
                .param(secret.sha256())
                .query(ReceiptLink.class)
                .optional()
                .filter(link -> link.opens(now)
                        || link.usedAt() != null && now.isBefore(link.usedAt().plus(TOLD_FOR)));
    }

    /**
     * Confirms for whoever has the link. Sent a second time, it changes nothing.
     *
     * @param name as the receiver gives it
     * @throws NotFoundException if the link opens nothing
     */
    @Transactional
    public void confirm(Secret secret, String name, List<Arrival> found) {
        ReceiptLink before = of(secret).orElseThrow(NotFoundException::new);
        Shipment shipment = shipments.lock(before.productionId(), before.shipmentId());
        // Read again behind the lock: the other of two presses may have used it, or its maker revoked it.
        ReceiptLink link = of(secret).orElseThrow(NotFoundException::new);
        if (link.isUsed()) {
            return;
        }
        jdbc.sql("update shipment_link set used_at = ?, used_by_name = ? where id = ?")
                .params(Timestamp.from(clock.instant()), name, link.id())
                .update();
        arrivals.confirm(new Signatory(link.productionId(), null, name), link.id(), shipment, found);
    }
}
