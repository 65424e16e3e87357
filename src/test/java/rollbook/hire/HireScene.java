package rollbook.hire;

import java.sql.Date;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.supplier.SupplierDetails;
import rollbook.supplier.Suppliers;
import rollbook.testing.Fixtures;
import rollbook.testing.TestProduction;

/** A production with a supplier and hired items. */
final class HireScene {
    static final LocalDate TODAY = LocalDate.now(ZoneId.of("Europe/Lisbon"));

    final TestProduction production;
    final Membership office;
    final UUID set;
    final UUID supplier;
    private final JdbcClient jdbc;

    HireScene(Fixtures fixtures, Suppliers suppliers, JdbcClient jdbc) {
        this.jdbc = jdbc;
        production = fixtures.production();
        office = production.as(Role.OFFICE);
        set = production.place("Set", false);
        supplier = supplier(suppliers, "Hire house");
    }

    UUID supplier(Suppliers suppliers, String name) {
        return suppliers.add(office, new SupplierDetails(name, null, Set.of(), LocalTime.of(16, 0), 0, 1, 2, ""));
    }

    /** Hired from the supplier at 45.00 a week, as somebody wrote it into the inventory. */
    UUID hired(String code, String kind, @Nullable LocalDate until) {
        UUID item = production.item(code, kind, set, null);
        jdbc.sql("""
                        update inventory_item set ownership = 'HIRED', supplier = 'hire house', cost_minor_units = 4500,
                            hired_until = ? where id = ?
                        """)
                .param(until == null ? null : Date.valueOf(until))
                .param(item)
                .update();
        return item;
    }

    /** From two weeks ago until a date, at 60.00 a week, one week at least. */
    NewTerms terms(LocalDate dueOn, UUID... items) {
        return terms(dueOn, 6_000, items);
    }

    NewTerms terms(LocalDate dueOn, long weekMinorUnits, UUID... items) {
        Map<UUID, Long> rates = new LinkedHashMap<>();
        for (UUID item : items) {
            rates.put(item, weekMinorUnits);
        }
        return new NewTerms(supplier, "", TODAY.minusWeeks(2), dueOn, 1, null, "", rates);
    }
}
