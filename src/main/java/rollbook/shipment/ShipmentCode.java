package rollbook.shipment;

import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.production.CodeKind;

/** Shipment 3. */
@Component
class ShipmentCode implements CodeKind {
    @Override
    public String numbered() {
        return "shipment.name";
    }

    /** The state is what {@link Shipment#state} says. */
    @Override
    public String rows() {
        return """
                select s.id, 'shipment.code' as what, s.number::text as code, '' as also,
                       f.name || ' – ' || t.name as detail, null::date as on_date,
                       'shipment.state.' || case
                         when s.state <> 'SENT' then s.state
                         when n.open > 0 then case when n.arrived > 0 then 'ARRIVED_IN_PART' else 'SENT' end
                         when n.lost = 0 then 'ARRIVED'
                         when n.arrived > 0 then 'LOST_IN_PART' else 'LOST' end as state,
                       s.state = 'DISCARDED' as past
                from shipment_shipment s
                join production_place f on f.id = s.from_place_id
                join production_place t on t.id = s.to_place_id
                cross join lateral (
                    select count(*) filter (where i.state in ('UNDER_WAY', 'MISSING')) as open,
                           count(*) filter (where i.state = 'ARRIVED') as arrived,
                           count(*) filter (where i.state = 'LOST') as lost
                    from shipment_item i where i.shipment_id = s.id) n
                where s.production_id = :production
                """;
    }

    @Override
    public String page(UUID id) {
        return "shipments/" + id;
    }
}
