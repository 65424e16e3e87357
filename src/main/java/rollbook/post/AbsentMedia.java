package rollbook.post;

import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.production.Alarm;
import rollbook.production.AlarmSource;
import rollbook.production.Role;

/** Raises an alarm for each medium that by its chain of custody is at post, and that post says isn't there. */
@Component
class AbsentMedia implements AlarmSource {
    private final JdbcClient jdbc;

    AbsentMedia(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<Alarm> alarms(UUID productionId) {
        return jdbc.sql("""
                        select w.id, w.item_id, i.code, p.name, w.at from post_word w
                        join inventory_item i on i.id = w.item_id and i.condition in ('GOOD', 'QUARANTINED')
                        join post_place s on s.production_id = w.production_id and s.place_id = i.place_id
                        join production_place p on p.id = s.place_id
                        where w.production_id = ? and not w.here
                          and not exists (select 1 from post_word later where later.custody_id = w.custody_id and later.id > w.id)
                          and not exists (select 1 from inventory_custody k
                                          where k.item_id = w.item_id and k.id > w.custody_id and k.place_id <> s.place_id)
                        order by w.id
                        """)
                .param(productionId)
                .query((row, number) -> new Alarm(
                        "post.absent." + row.getLong("id"),
                        Set.of(Role.POST, Role.OFFICE, Role.WRANGLER),
                        "post.alarm.absent",
                        List.of(row.getString("code"), row.getString("name")),
                        "post/media/" + row.getObject("item_id", UUID.class),
                        row.getTimestamp("at").toInstant()))
                .list();
    }
}
