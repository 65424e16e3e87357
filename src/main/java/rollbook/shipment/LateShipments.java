package rollbook.shipment;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.production.Alarm;
import rollbook.production.AlarmSource;
import rollbook.production.Role;

/** Raises an alarm for a shipment that should have arrived, and for items that somebody missed on its arrival. */
@Component
class LateShipments implements AlarmSource {
    private static final Set<Role> ROLES = Set.of(Role.WRANGLER, Role.OFFICE, Role.POST);

    private final JdbcClient jdbc;
    private final Clock clock;

    LateShipments(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** One that is late, expected anew and late again raises another alarm; so does an item that is missed again. */
    @Override
    public List<Alarm> alarms(UUID productionId) {
        return jdbc.sql("""
                        select 'LATE' as what, s.id, s.number, t.name as place, count(*)::int as items, min(i.code) as first_code,
                               s.expected_by as since,
                               s.dispatch || '.' || extract(epoch from s.expected_by)::bigint as occasion
                        from shipment_shipment s
                        join production_place t on t.id = s.to_place_id
                        join shipment_item x on x.shipment_id = s.id and x.state = 'UNDER_WAY'
                        join inventory_item i on i.id = x.item_id
                        where s.production_id = :production and s.state = 'SENT' and s.expected_by < :now
                        group by s.id, t.id
                        union all
                        select 'MISSING', s.id, s.number, t.name, count(*)::int, min(i.code), min(missed.at), min(missed.id)::text
                        from shipment_shipment s
                        join production_place t on t.id = s.to_place_id
                        join shipment_item x on x.shipment_id = s.id and x.state = 'MISSING'
                        join inventory_item i on i.id = x.item_id
                        join lateral (select a.id, a.at from shipment_act a
                                      where a.shipment_id = s.id and a.item_id = x.item_id and a.act = 'MISSING'
                                      order by a.id desc limit 1) missed on true
                        where s.production_id = :production
                        group by s.id, t.id
                        order by since, number
                        """)
                .param("production", productionId)
                .param("now", Timestamp.from(clock.instant()))
                .query(LateShipments::alarm)
                .list();
    }

    private static Alarm alarm(ResultSet row, int number) throws SQLException {
        String what = row.getString("what");
        String id = row.getString("id");
        return new Alarm(
                "shipment:" + what + ":" + id + ":" + row.getString("occasion"),
                ROLES,
                "shipment.alarm." + what,
                List.of(row.getInt("number"), row.getString("place"), row.getInt("items"), row.getString("first_code")),
                "shipments/" + id,
                row.getTimestamp("since").toInstant());
    }
}
