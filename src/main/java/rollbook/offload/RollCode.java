package rollbook.offload;

import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.production.CodeKind;

/** A014. */
@Component
class RollCode implements CodeKind {
    /** The state is that of its card, as long as the card holds no later roll. */
    @Override
    public String rows() {
        return """
                select r.id, 'offload.code' as what, r.code, '' as also, i.code as detail, d.date as on_date,
                       case when r.pulled_at is null then 'web.card-state.IN_CAMERA'
                            when exists (select 1 from offload_roll later
                                         where later.card_id = r.card_id and later.loaded_at > r.loaded_at)
                              then 'offload.code.card-went-on'
                            else 'web.card-state.' || i.card_state end as state,
                       false as past
                from offload_roll r
                join inventory_item i on i.id = r.card_id
                join schedule_day d on d.id = r.day_id
                where r.production_id = :production
                """;
    }

    @Override
    public String page(UUID id) {
        return "rolls/" + id;
    }
}
