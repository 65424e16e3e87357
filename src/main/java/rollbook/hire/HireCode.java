package rollbook.hire;

import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.production.CodeKind;

/** HIRE-1. */
@Component
class HireCode implements CodeKind {
    @Override
    public String rows() {
        return """
                select a.id, 'hire.code' as what, '%s' || a.number as code, '' as also,
                       coalesce((select string_agg(distinct i.supplier, ', ') from hire_item h
                                 join inventory_item i on i.id = h.item_id
                                 where h.agreement_id = a.id and i.supplier <> ''), '') as detail,
                       null::date as on_date, '' as state, false as past
                from hire_agreement a where a.production_id = :production
                """.formatted(HireAgreement.PREFIX);
    }

    @Override
    public String page(UUID id) {
        return "hire/" + id;
    }
}
