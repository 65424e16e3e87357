package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.configuration.FluentConfiguration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import rollbook.testing.PortalTest;

/** What was typed for each leg is there as suppliers and catalogue items, in a schema of its own. */
@PortalTest
class SupplyMigrationTests {
    private static final String SCHEMA = "supply_migration";
    private static final String BEFORE = "20261126.1705";

    @Autowired
    DataSource database;

    @AfterEach
    void dropSchema() {
        new JdbcTemplate(database).execute("drop schema if exists " + SCHEMA + " cascade");
    }

    private FluentConfiguration flyway() {
        return Flyway.configure().dataSource(database).schemas(SCHEMA).locations("classpath:db/migration");
    }

    @Test
    void nothingOfAnySupplyIsLost() throws SQLException {
        flyway().target(BEFORE).load().migrate();
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("set search_path to " + SCHEMA);
            try {
                statement.execute(BEFORE_DATA);
                flyway().load().migrate();
                JdbcClient jdbc = JdbcClient.create(new SingleConnectionDataSource(connection, true));
                assertThat(rows(jdbc, SUPPLIES))
                        .containsExactly(
                                "Array | Array | - | 16:00:00 | 0 | 8 | 12 | ARRAY | Array | 108000000000000 | 1 | 1480000 | - | - | OFFICE",
                                "Shuttle | shop | PT | 15:00:00 | 2500 | 2 | 4 | DRIVE | shuttle drive | 12000000000000 | 2 | 61500 | 4500 | 1 | SET",
                                "Spare | shop | PT | 15:00:00 | 2500 | 2 | 4 | DRIVE | Spare | 4000000000000 | 1 | 0 | - | - | OFFICE",
                                "Tape | shop (2) | - | 15:00:00 | 2500 | 2 | 3 | TAPE | Tape | 18000000000000 | 5 | 9400 | - | - | OFFICE",
                                "Tape | Shop | - | 12:00:00 | 0 | 1 | 1 | TAPE | Tape | 18000000000000 | 1 | 1 | - | - | SET");
                assertThat(rows(jdbc, ORDERS)).containsExactly("1 | shop | SET", "2 | - | OFFICE");
            } finally {
                statement.execute("reset search_path");
            }
        }
    }

    private static List<String> rows(JdbcClient jdbc, String query) {
        List<String> rows = new ArrayList<>();
        jdbc.sql(query).query(row -> {
            List<String> cells = new ArrayList<>();
            for (int i = 1; i <= row.getMetaData().getColumnCount(); i++) {
                cells.add(row.getString(i) == null ? "-" : row.getString(i));
            }
            rows.add(String.join(" | ", cells));
        });
        return rows;
    }

    private static final String SUPPLIES = """
            select l.name, s.name, s.country, s.order_cut_off, s.delivery_minor_units, s.lead_time_working_days,
                   s.slow_lead_time_working_days, i.kind, i.model, i.capacity_bytes, i.pack_size, p.item_minor_units,
                   p.hire_week_minor_units, p.hire_minimum_weeks, f.delivered_to
            from forecast_supply f
            join production_leg l on l.id = f.leg_id
            join supplier_item i on i.id = f.catalogue_item_id
            join supplier_supplier s on s.id = i.supplier_id and s.production_id = f.production_id
            join supplier_price p on p.item_id = i.id
            order by l.name, s.lead_time_working_days desc
            """;

    private static final String ORDERS = """
            select l.items, s.name, o.delivered_to from purchase_order o
            join purchase_line l on l.order_id = o.id
            left join supplier_supplier s on s.id = o.supplier_id order by l.items
            """;

    /** Two productions; legs with equal terms, with the same name and other terms, and without a supplier's name. */
    private static final String BEFORE_DATA = """
            insert into people_person (id, sign_in_name, display_name, password_hash, created_at)
            values ('00000000-0000-0000-0000-000000000001', 'office', 'Office', 'none', now());
            insert into production_production (id, code, name, time_zone, currency, created_at)
            values ('00000000-0000-0000-0000-00000000000a', 'SHOW-A', 'A', 'Europe/Lisbon', 'EUR', now()),
                   ('00000000-0000-0000-0000-00000000000b', 'SHOW-B', 'B', 'Europe/Lisbon', 'EUR', now());
            insert into production_place (id, production_id, name, off_site, position)
            values ('00000000-0000-0000-0000-0000000000aa', '00000000-0000-0000-0000-00000000000a', 'Set', false, 1),
                   ('00000000-0000-0000-0000-0000000000bb', '00000000-0000-0000-0000-00000000000b', 'Set', false, 1);
            insert into production_leg (id, production_id, name, media_kind, place_id, rendition, needed_to_clear, position)
            values ('00000000-0000-0000-0000-0000000000a1', '00000000-0000-0000-0000-00000000000a', 'Shuttle', 'DRIVE',
                    '00000000-0000-0000-0000-0000000000aa', 'AS_RECORDED', true, 1),
                   ('00000000-0000-0000-0000-0000000000a2', '00000000-0000-0000-0000-00000000000a', 'Array', 'ARRAY',
                    '00000000-0000-0000-0000-0000000000aa', 'AS_RECORDED', true, 2),
                   ('00000000-0000-0000-0000-0000000000a3', '00000000-0000-0000-0000-00000000000a', 'Tape', 'TAPE',
                    '00000000-0000-0000-0000-0000000000aa', 'AS_RECORDED', true, 3),
                   ('00000000-0000-0000-0000-0000000000a4', '00000000-0000-0000-0000-00000000000a', 'Spare', 'DRIVE',
                    '00000000-0000-0000-0000-0000000000aa', 'AS_RECORDED', true, 4),
                   ('00000000-0000-0000-0000-0000000000a5', '00000000-0000-0000-0000-00000000000a', 'Unsupplied', 'DRIVE',
                    '00000000-0000-0000-0000-0000000000aa', 'AS_RECORDED', true, 5),
                   ('00000000-0000-0000-0000-0000000000b1', '00000000-0000-0000-0000-00000000000b', 'Tape', 'TAPE',
                    '00000000-0000-0000-0000-0000000000bb', 'AS_RECORDED', true, 1);
            insert into inventory_item (id, production_id, code, kind, model, capacity_bytes, ownership, place_id,
                condition, created_at, leg_id)
            values ('00000000-0000-0000-0000-0000000000f1', '00000000-0000-0000-0000-00000000000a', 'SHUTTLE-1', 'DRIVE',
                    'shuttle drive', 12000000000000, 'BOUGHT', '00000000-0000-0000-0000-0000000000aa', 'GOOD', now(),
                    '00000000-0000-0000-0000-0000000000a1');
            insert into forecast_supply (leg_id, production_id, item_capacity_bytes, pack_size, lead_time_working_days,
                slow_lead_time_working_days, item_price_minor_units, supplier, country, order_cut_off,
                delivery_minor_units, delivered_to, hire_week_minor_units, hire_minimum_weeks)
            values ('00000000-0000-0000-0000-0000000000a1', '00000000-0000-0000-0000-00000000000a', 12000000000000, 2, 2, 4,
                    61500, 'shop', 'PT', '15:00', 2500, 'SET', 4500, 1),
                   ('00000000-0000-0000-0000-0000000000a2', '00000000-0000-0000-0000-00000000000a', 108000000000000, 1, 8, 12,
                    1480000, '', null, '16:00', 0, 'OFFICE', null, null),
                   ('00000000-0000-0000-0000-0000000000a3', '00000000-0000-0000-0000-00000000000a', 18000000000000, 5, 2, 3,
                    9400, 'shop', null, '15:00', 2500, 'OFFICE', null, null),
                   ('00000000-0000-0000-0000-0000000000a4', '00000000-0000-0000-0000-00000000000a', 4000000000000, 1, 2, 4,
                    0, 'shop', 'PT', '15:00', 2500, 'OFFICE', null, null),
                   ('00000000-0000-0000-0000-0000000000b1', '00000000-0000-0000-0000-00000000000b', 18000000000000, 1, 1, 1,
                    1, 'Shop', null, '12:00', 0, 'SET', null, null);
            insert into forecast_order (id, production_id, leg_id, entered_at, entered_by, ordered_on, expected_on, items,
                item_capacity_bytes)
            values ('00000000-0000-0000-0000-0000000000e1', '00000000-0000-0000-0000-00000000000a',
                    '00000000-0000-0000-0000-0000000000a1', now(), '00000000-0000-0000-0000-000000000001', current_date,
                    current_date, 1, 1),
                   ('00000000-0000-0000-0000-0000000000e2', '00000000-0000-0000-0000-00000000000a',
                    '00000000-0000-0000-0000-0000000000a5', now(), '00000000-0000-0000-0000-000000000001', current_date,
                    current_date, 2, 1);
            """;
}
