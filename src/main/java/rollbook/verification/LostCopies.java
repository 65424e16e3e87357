package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.production.Alarm;
import rollbook.production.AlarmSource;
import rollbook.production.Role;

/**
 * Raises an alarm for each roll whose card was erased counting on a copy that is lost now with its medium, and for each
 * roll of which nothing else is proven whose card is lost. A clearance that wasn't used yet is withdrawn instead, see
 * {@link ClearanceWatch}.
 *
 * <p>An alarm ends when as many copies are proven again as were counted on and weren't erased in order since, or when the
 * medium is found or given up for good.
 */
@Component
class LostCopies implements AlarmSource {
    private static final Set<Role> ROLES = Set.of(Role.WRANGLER, Role.OFFICE, Role.POST);

    private static final String PROVEN = """
            select count(*) from offload_copy o join inventory_item oi on oi.id = o.item_id
            join lateral (select v.verdict, v.reasons from verification_verdict v where v.copy_id = o.id
                          order by v.id desc limit 1) newest on newest.verdict = 'PROVEN'
              and (o.rendition = 'AS_RECORDED' or 'ROUND_TRIP_PROVEN' = any (newest.reasons))
            where o.roll_id = r.id and o.erased_at is null and oi.condition = 'GOOD'
            """;

    private final JdbcClient jdbc;

    LostCopies(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<Alarm> alarms(UUID productionId) {
        return jdbc.sql("""
                        with erasure as (
                          select c.production_id, c.verdict_ids from verification_clearance c
                          join verification_erasure e on e.clearance_id = c.id
                          union all
                          select c.production_id, c.verdict_ids from verification_medium_clearance c
                          join verification_medium_erasure e on e.clearance_id = c.id),
                        counted_on as (
                          select distinct v.roll_id, o.id as copy_id, o.item_id from erasure e
                          join verification_verdict v on v.id = any (e.verdict_ids)
                          join offload_copy o on o.id = v.copy_id and o.erased_at is null
                          where e.production_id = :production)
                        select 'COPY' as what, r.id as roll_id, r.code as roll_code, i.code as item_code, proven.count, gone.id, gone.at
                        from counted_on lost
                        join inventory_item i on i.id = lost.item_id and i.condition = 'LOST'
                        join offload_roll r on r.id = lost.roll_id
                        cross join lateral (%1$s) proven
                        join lateral (select k.id, k.at from inventory_custody k where k.item_id = i.id and k.act = 'LOST'
                                      order by k.id desc limit 1) gone on true
                        where proven.count < (select count(*) from counted_on all_of where all_of.roll_id = r.id)
                        union all
                        select 'CARD', r.id, r.code, i.code, proven.count, gone.id, gone.at
                        from inventory_item i
                        join offload_roll r on r.card_id = i.id
                          and not exists (select 1 from offload_roll later where later.card_id = i.id and later.loaded_at > r.loaded_at)
                        cross join lateral (%1$s) proven
                        join lateral (select k.id, k.at from inventory_custody k where k.item_id = i.id and k.act = 'LOST'
                                      order by k.id desc limit 1) gone on true
                        where i.production_id = :production and i.condition = 'LOST' and i.card_state <> 'BLANK' and proven.count = 0
                        order by count, at, roll_code, item_code
                        """.formatted(PROVEN))
                .param("production", productionId)
                .query(LostCopies::alarm)
                .list();
    }

    private static Alarm alarm(ResultSet row, int number) throws SQLException {
        UUID roll = row.getObject("roll_id", UUID.class);
        return new Alarm(
                "lost-with-medium:" + row.getLong("id") + ":" + roll,
                ROLES,
                "verification.alarm.lost." + row.getString("what"),
                List.of(row.getString("roll_code"), row.getString("item_code"), row.getInt("count")),
                "rolls/" + roll,
                row.getTimestamp("at").toInstant());
    }
}
