package rollbook.purchase;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
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

/** Media that was on order before there were orders in steps is there as orders, in a schema of its own. */
@PortalTest
class OrderTakeOverTests {
    private static final String SCHEMA = "order_take_over";
    private static final String BEFORE = "20261126.2121";
    private static final UUID SHOW = UUID.fromString("00000000-0000-0000-0000-00000000000a");

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
    void nothingOfMediaOnOrderIsLost() throws SQLException {
        flyway().target(BEFORE).load().migrate();
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("set search_path to " + SCHEMA);
            try {
                statement.execute(BEFORE_DATA);
                flyway().load().migrate();
                JdbcClient jdbc = JdbcClient.create(new SingleConnectionDataSource(connection, true));
                List<PurchaseOrder> orders = new OrderRows(jdbc).list(SHOW);
                assertThat(orders.stream().map(OrderTakeOverTests::says))
                        .containsExactly(
                                "1 shop SET PART_ARRIVED drive 2000000000000 3/5 LOOK 2031-03-01 2031-03-05",
                                "2 shop OFFICE CANCELLED SHUTTLE 4000000000000 0/2 LOOK 2031-03-02 2031-03-06",
                                "3 - OFFICE ARRIVED SHUTTLE 2000000000000 1/1 LOOK 2031-03-03 2031-03-07");
                assertThat(orders.get(0).lastCameOn())
                        .as("recorded at half past eleven in the evening of Lisbon")
                        .hasToString("2031-03-04");
                assertThat(orders.get(0).steps().stream().map(OrderStep::kind))
                        .containsExactly(
                                OrderStep.Kind.PROPOSED,
                                OrderStep.Kind.PLACED,
                                OrderStep.Kind.CANCELLED,
                                OrderStep.Kind.TAKEN_BACK);
                assertThat(orders.get(0).steps().get(3).takenBackStep()).isEqualTo(3);
                assertThat(orders).extracting(PurchaseOrder::version).containsExactly(5, 1, 1);
                assertThat(jdbc.sql("select count(*) from purchase_receipt_withdrawal")
                                .query(Integer.class)
                                .single())
                        .as("a receipt that was taken back stays as that")
                        .isEqualTo(1);
                assertThat(jdbc.sql("select order_id from forecast_flag_act where act = 'CLOSED_BY_ORDER'")
                                .query(UUID.class)
                                .single())
                        .isEqualTo(orders.get(0).id());
            } finally {
                statement.execute("reset search_path");
            }
        }
    }

    private static String says(PurchaseOrder order) {
        OrderLine line = order.lines().get(0);
        List<String> parts = new ArrayList<>(List.of(
                Integer.toString(order.number()),
                order.supplierName().isEmpty() ? "-" : order.supplierName(),
                order.deliveredTo().name(),
                order.state().name(),
                line.model(),
                String.valueOf(line.capacityBytes()),
                line.came() + "/" + line.items(),
                order.note(),
                String.valueOf(order.orderedOn()),
                String.valueOf(order.expectedOn())));
        return String.join(" ", parts);
    }

    private static final String BEFORE_DATA = """
            insert into people_person (id, sign_in_name, display_name, password_hash, created_at)
            values ('00000000-0000-0000-0000-000000000001', 'office', 'Office', 'none', now());
            insert into production_production (id, code, name, time_zone, currency, created_at)
            values ('00000000-0000-0000-0000-00000000000a', 'SHOW-A', 'A', 'Europe/Lisbon', 'EUR', now());
            insert into production_place (id, production_id, name, off_site, position)
            values ('00000000-0000-0000-0000-0000000000aa', '00000000-0000-0000-0000-00000000000a', 'Set', false, 1);
            insert into production_leg (id, production_id, name, media_kind, place_id, rendition, needed_to_clear, position)
            values ('00000000-0000-0000-0000-0000000000a1', '00000000-0000-0000-0000-00000000000a', 'SHUTTLE', 'DRIVE',
                    '00000000-0000-0000-0000-0000000000aa', 'AS_RECORDED', true, 1);
            insert into supplier_supplier (id, production_id, name, order_cut_off, delivery_minor_units,
                lead_time_working_days, slow_lead_time_working_days)
            values ('00000000-0000-0000-0000-0000000000c1', '00000000-0000-0000-0000-00000000000a', 'shop', '15:00', 0, 2, 3);
            insert into supplier_item (id, supplier_id, kind, model, capacity_bytes, pack_size)
            values ('00000000-0000-0000-0000-0000000000d1', '00000000-0000-0000-0000-0000000000c1', 'DRIVE', 'drive',
                    2000000000000, 1);
            insert into forecast_supply (leg_id, production_id, catalogue_item_id, delivered_to)
            values ('00000000-0000-0000-0000-0000000000a1', '00000000-0000-0000-0000-00000000000a',
                    '00000000-0000-0000-0000-0000000000d1', 'SET');
            insert into forecast_order (id, production_id, leg_id, entered_at, entered_by, ordered_on, expected_on, items,
                item_capacity_bytes, note, supplier_id, delivered_to)
            values ('00000000-0000-0000-0000-0000000000e1', '00000000-0000-0000-0000-00000000000a',
                    '00000000-0000-0000-0000-0000000000a1', '2031-03-01 10:00Z', '00000000-0000-0000-0000-000000000001',
                    '2031-03-01', '2031-03-05', 5, 2000000000000, 'LOOK', '00000000-0000-0000-0000-0000000000c1', 'SET'),
                   ('00000000-0000-0000-0000-0000000000e2', '00000000-0000-0000-0000-00000000000a',
                    '00000000-0000-0000-0000-0000000000a1', '2031-03-02 10:00Z', '00000000-0000-0000-0000-000000000001',
                    '2031-03-02', '2031-03-06', 2, 4000000000000, 'LOOK', '00000000-0000-0000-0000-0000000000c1', 'OFFICE'),
                   ('00000000-0000-0000-0000-0000000000e3', '00000000-0000-0000-0000-00000000000a',
                    '00000000-0000-0000-0000-0000000000a1', '2031-03-03 10:00Z', '00000000-0000-0000-0000-000000000001',
                    '2031-03-03', '2031-03-07', 1, 2000000000000, 'LOOK', null, null);
            insert into forecast_order_step (order_id, number, at, by_id, step, items, came_on, taken_back_step)
            values ('00000000-0000-0000-0000-0000000000e1', 1, '2031-03-04 12:00Z', '00000000-0000-0000-0000-000000000001',
                    'CAME', 4, '2031-03-04', null),
                   ('00000000-0000-0000-0000-0000000000e1', 2, '2031-03-04 12:05Z', '00000000-0000-0000-0000-000000000001',
                    'TAKEN_BACK', 4, null, 1),
                   ('00000000-0000-0000-0000-0000000000e1', 3, '2031-03-04 23:30Z', '00000000-0000-0000-0000-000000000001',
                    'CAME', 3, null, null),
                   ('00000000-0000-0000-0000-0000000000e1', 4, '2031-03-05 12:00Z', '00000000-0000-0000-0000-000000000001',
                    'CANCELLED', 2, null, null),
                   ('00000000-0000-0000-0000-0000000000e1', 5, '2031-03-05 12:10Z', '00000000-0000-0000-0000-000000000001',
                    'TAKEN_BACK', 2, null, 4),
                   ('00000000-0000-0000-0000-0000000000e2', 1, '2031-03-05 12:00Z', '00000000-0000-0000-0000-000000000001',
                    'CANCELLED', 2, null, null),
                   ('00000000-0000-0000-0000-0000000000e3', 1, '2031-03-07 12:00Z', '00000000-0000-0000-0000-000000000001',
                    'CAME', 1, '2031-03-07', null);
            insert into forecast_flag (id, production_id, leg_id, opened_on)
            values ('00000000-0000-0000-0000-0000000000f1', '00000000-0000-0000-0000-00000000000a',
                    '00000000-0000-0000-0000-0000000000a1', '2031-02-27');
            insert into forecast_flag_act (flag_id, number, at, act, order_id)
            values ('00000000-0000-0000-0000-0000000000f1', 1, now(), 'OPENED', null),
                   ('00000000-0000-0000-0000-0000000000f1', 2, now(), 'CLOSED_BY_ORDER',
                    '00000000-0000-0000-0000-0000000000e1');
            """;
}
