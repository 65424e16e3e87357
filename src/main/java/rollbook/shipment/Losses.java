package rollbook.shipment;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItemChanged;
import rollbook.production.Membership;
import rollbook.web.Display;
import rollbook.web.Refusal;

/** What is lost on its way. An item that somebody reports lost elsewhere, on its own page, ends its way here too. */
@Service
class Losses {
    private final JdbcClient jdbc;
    private final Shipments shipments;
    private final Custody custody;
    private final Display display;

    Losses(JdbcClient jdbc, Shipments shipments, Custody custody, Display display) {
        this.jdbc = jdbc;
        this.shipments = shipments;
        this.custody = custody;
        this.display = display;
    }

    /**
     * Reports items of a shipment lost. What was cleared counting on a copy on them is looked at again.
     *
     * @throws Refusal if somebody changed the shipment meanwhile, or one of the items isn't under way in it
     */
    @Transactional
    public void report(Membership by, UUID shipmentId, Set<UUID> itemIds, String reason, int version) {
        Shipment shipment = shipments.lock(by.productionId(), shipmentId, version);
        List<ShipmentItem> lost = shipments.items(by.productionId(), shipmentId).stream()
                .filter(item -> itemIds.contains(item.itemId()))
                .toList();
        if (lost.size() < itemIds.size() || !lost.stream().allMatch(ShipmentItem::isOpen)) {
            throw new Refusal("shipment.refused.changed-meanwhile", shipment.number());
        }
        for (ShipmentItem item : lost) {
            custody.reportLost(
                    by, item.itemId(), display.text("shipment.custody.lost", shipment.number()) + " " + reason);
        }
    }

    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void onMediaItemChanged(MediaItemChanged changed) {
        // What isn't sent yet is taken out of its box; what is under way is lost there.
        jdbc.sql("""
                        delete from shipment_item x using inventory_item i
                        where i.id = x.item_id and i.production_id = :production and i.id = :item and i.condition = 'LOST'
                          and x.state = 'PACKED'
                        """)
                .param("production", changed.productionId())
                .param("item", changed.itemId())
                .update();
        jdbc.sql("""
                        with gone as (
                          update shipment_item x set state = 'LOST' from inventory_item i
                          where i.id = x.item_id and i.production_id = :production and i.id = :item and i.condition = 'LOST'
                            and x.state in ('UNDER_WAY', 'MISSING')
                          returning x.shipment_id, x.item_id)
                        insert into shipment_act (shipment_id, at, act, item_id, note, person_id, by_name)
                        select gone.shipment_id, k.at, 'LOST', gone.item_id, k.note, k.person_id, coalesce(p.display_name, k.by_name)
                        from gone
                        cross join lateral (select c.at, c.note, c.person_id, c.by_name from inventory_custody c
                                            where c.item_id = gone.item_id order by c.id desc limit 1) k
                        left join people_person p on p.id = k.person_id
                        """)
                .param("production", changed.productionId())
                .param("item", changed.itemId())
                .update();
    }
}
