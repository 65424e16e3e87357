package rollbook.post;

import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.production.CodeKind;

/** Set 2. */
@Component
class SetCode implements CodeKind {
    @Override
    public String numbered() {
        return "post.set.name";
    }

    @Override
    public String rows() {
        return """
                select s.id, 'post.code' as what, s.number::text as code, '' as also, l.name as detail,
                       d.date as on_date, '' as state,
                       exists (select 1 from post_set newer where newer.replaces = s.id)
                         or exists (select 1 from post_set_withdrawal w where w.set_id = s.id) as past
                from post_set s
                join production_leg l on l.id = s.leg_id
                join schedule_day d on d.id = s.up_to_day_id
                where s.production_id = :production
                """;
    }

    @Override
    public String page(UUID id) {
        return "post/sets/" + id;
    }
}
