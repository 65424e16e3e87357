package rollbook.post;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** When which item was at a place. */
@Repository
class Stays {
    private final JdbcClient jdbc;

    Stays(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** In the order in which the items came. */
    List<Stay> at(UUID productionId, UUID placeId) {
        return jdbc.sql("""
                        with links as (
                            select k.id, k.item_id, k.at, k.act, k.place_id,
                                   lag(k.place_id) over (partition by k.item_id order by k.id) as before
                            from inventory_custody k where k.production_id = :production
                        ), changes as (
                            select id, item_id, at, act, place_id, lead(at) over (partition by item_id order by id) as until
                            from links where before is distinct from place_id
                        )
                        select c.item_id, c.id as custody_id, c.at as arrived_at, c.until, c.act = 'REGISTERED' as registered,
                               w.here, w.at as said_at, p.display_name as said_by_name, w.note
                        from changes c
                        left join lateral (select here, at, by_id, note from post_word where custody_id = c.id
                                           order by id desc limit 1) w on true
                        left join people_person p on p.id = w.by_id
                        where c.place_id = :place order by c.id
                        """)
                .param("production", productionId)
                .param("place", placeId)
                .query(Stay.class)
                .list();
    }
}
