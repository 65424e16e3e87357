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

/** Raises an alarm for each copy that a clearance leaned on and that is proven no longer. */
@Component
class FallenCopies implements AlarmSource {
    private static final Set<Role> ROLES = Set.of(Role.WRANGLER, Role.OFFICE, Role.POST);

    private final JdbcClient jdbc;

    FallenCopies(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** A copy that is put right and falls again is another alarm; so is one whose card is erased meanwhile. */
    @Override
    public List<Alarm> alarms(UUID productionId) {
        return jdbc.sql("""
                        select c.id as copy_id, r.code as roll_code, i.code as item_code,
                               bool_or(a.card_erased) as card_erased,
                               coalesce(min(a.id) filter (where a.verdict_id > good.last), max(a.id)) as first_id,
                               coalesce(min(a.raised_at) filter (where a.verdict_id > good.last), max(a.raised_at)) as since
                        from verification_alarm a
                        join offload_copy c on c.id = a.copy_id
                        join offload_roll r on r.id = a.roll_id
                        join inventory_item i on i.id = c.item_id
                        cross join lateral (
                            select coalesce(max(v.id) filter (where v.verdict = 'PROVEN'
                                       and (c.rendition = 'AS_RECORDED' or 'ROUND_TRIP_PROVEN' = any (v.reasons))), 0) as last,
                                   max(v.id) as newest
                            from verification_verdict v where v.copy_id = c.id) good
                        where a.production_id = ? and good.last < good.newest
                        group by c.id, r.id, i.id
                        order by since, r.code, i.code
                        """).param(productionId).query(FallenCopies::alarm).list();
    }

    private static Alarm alarm(ResultSet row, int number) throws SQLException {
        boolean erased = row.getBoolean("card_erased");
        return new Alarm(
                "fallen-copy:" + row.getLong("first_id") + (erased ? ":erased" : ""),
                ROLES,
                erased ? "verification.alarm.erased" : "verification.alarm.cleared",
                List.of(row.getString("roll_code"), row.getString("item_code")),
                "re-checks",
                row.getTimestamp("since").toInstant());
    }
}
