package rollbook.inventory;

import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.production.CodeKind;

/** CARD-003, or its maker's number. */
@Component
class ItemCode implements CodeKind {
    /** The state is what {@link ItemState#of} says. */
    @Override
    public String rows() {
        return """
                select i.id, 'inventory.kind.' || i.kind as what, i.code, i.serial as also, p.name as detail,
                       null::date as on_date,
                       case when i.condition = 'QUARANTINED' then 'web.card-state.QUARANTINED'
                            when i.condition = 'GOOD' and i.card_state is not null then 'web.card-state.' || i.card_state
                            else 'inventory.state.' || i.condition end as state,
                       i.condition in ('RETIRED', 'RETURNED') as past
                from inventory_item i join production_place p on p.id = i.place_id
                where i.production_id = :production
                """;
    }

    @Override
    public String page(UUID id) {
        return "media/" + id;
    }
}
