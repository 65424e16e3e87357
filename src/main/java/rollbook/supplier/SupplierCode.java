package rollbook.supplier;

import java.util.UUID;
import org.springframework.stereotype.Component;
import rollbook.production.CodeKind;

/** A supplier by its name. */
@Component
class SupplierCode implements CodeKind {
    @Override
    public String rows() {
        return """
                select s.id, 'supplier.code' as what, s.name as code, '' as also, '' as detail, null::date as on_date,
                       '' as state, false as past
                from supplier_supplier s where s.production_id = :production
                """;
    }

    @Override
    public String page(UUID id) {
        return "suppliers/" + id;
    }
}
