package rollbook.forecast;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.supplier.DeliveredTo;
import rollbook.supplier.Deliveries;
import rollbook.supplier.Delivery;

/** Tells suppliers' pages and lead times what was ordered from them and when it came. */
@Repository
class OrderedFromSuppliers implements Deliveries {
    private final JdbcClient jdbc;

    OrderedFromSuppliers(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<Delivery> of(UUID productionId) {
        return jdbc.sql("""
                        select o.id, o.supplier_id, l.name as what, o.ordered_on, o.expected_on, o.delivered_to,
                               o.items - coalesce(sum(s.items) filter (where s.step = 'CANCELLED'), 0)::int as items,
                               coalesce(sum(s.items) filter (where s.step = 'CAME'), 0)::int as came,
                               max(coalesce(s.came_on, (s.at at time zone p.time_zone)::date))
                                   filter (where s.step = 'CAME') as last_came_on
                        from forecast_order o
                        join production_production p on p.id = o.production_id
                        join production_leg l on l.id = o.leg_id
                        left join forecast_order_step s on s.order_id = o.id and not exists (
                            select 1 from forecast_order_step b
                            where b.order_id = s.order_id and b.taken_back_step = s.number)
                        where o.production_id = ? and o.supplier_id is not null
                        group by o.id, l.name, p.time_zone
                        order by o.ordered_on, o.entered_at, o.id
                        """).param(productionId).query(OrderedFromSuppliers::delivery).list().stream()
                .filter(delivery -> delivery.items() > 0)
                .toList();
    }

    private static Delivery delivery(ResultSet row, int number) throws SQLException {
        int items = row.getInt("items");
        int came = row.getInt("came");
        return new Delivery(
                row.getObject("id", UUID.class),
                row.getObject("supplier_id", UUID.class),
                row.getString("what"),
                items,
                came,
                row.getObject("ordered_on", LocalDate.class),
                row.getObject("expected_on", LocalDate.class),
                came == items ? row.getObject("last_came_on", LocalDate.class) : null,
                DeliveredTo.valueOf(row.getString("delivered_to")).furtherWorkingDays());
    }
}
