package rollbook.verification;

import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.production.CodeKind;

/** A document by its file's name, or by the first digits of its SHA-256. */
@Component
class DocumentCode implements CodeKind {
    @Override
    public String rows() {
        return """
                select d.id, 'verification.code' as what, d.file_name as code, encode(d.sha256, 'hex') as also,
                       left(encode(d.sha256, 'hex'), 12) as detail, null::date as on_date,
                       'verification.code.' || case
                         when r.state in ('WAITING', 'READING') then 'BEING_READ'
                         when r.state = 'REJECTED' then 'REJECTED'
                         when exists (select 1 from verification_part p where p.document_id = d.id
                              and not exists (select 1 from verification_assignment a where a.part_id = p.id))
                           then 'WAITS_FOR_PEOPLE'
                         else 'ASSIGNED' end as state,
                       false as past
                from verification_document d join verification_reading r on r.document_id = d.id
                where d.production_id = :production
                """;
    }

    @Override
    public String page(UUID id) {
        return "documents/" + id;
    }
}
