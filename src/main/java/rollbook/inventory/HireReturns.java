package rollbook.inventory;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The hired items that are still here. */
@Repository
public class HireReturns {
    private final JdbcClient jdbc;

    HireReturns(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Those with a date on which they are due back, the first one first, those of a supplier together. */
    public List<HireReturn> of(UUID productionId) {
        return jdbc.sql("""
                        select id as item_id, code, model, supplier, hired_until, created_at as registered_at
                        from inventory_item
                        where production_id = ? and ownership = 'HIRED' and hired_until is not null
                          and condition in ('GOOD', 'QUARANTINED')
                        order by hired_until, supplier, upper(code)
                        """).param(productionId).query(HireReturn.class).list();
    }
}
