package rollbook.offload;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.production.Membership;

/** The things that offloads use. */
@Repository
class SessionParts {
    private final JdbcClient jdbc;

    SessionParts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What the bytes of a session pass, in that order. */
    List<SessionPart> of(UUID productionId, UUID sessionId) {
        return jdbc.sql("""
                        select p.kind, i.id as item_id, i.code,
                               case when p.kind = 'DESTINATION' then i.write_bytes_per_second else i.read_bytes_per_second end
                                   as bytes_per_second,
                               i.capacity_bytes, c.leg_id, l.name as leg_name, c.rendition
                        from offload_session s
                        join offload_roll r on r.id = s.roll_id
                        cross join lateral (
                            select 'CARD' as kind, r.card_id as item_id, null::uuid as copy_id
                            union all select 'READER', s.reader_id, null
                            union all select 'ADAPTER', s.adapter_id, null
                            union all select 'DESTINATION', made.item_id, made.id
                                from offload_destination o join offload_copy made on made.id = o.copy_id
                                where o.session_id = s.id) p
                        join inventory_item i on i.id = p.item_id
                        left join offload_copy c on c.id = p.copy_id
                        left join production_leg l on l.id = c.leg_id
                        where s.production_id = ? and s.id = ?
                        order by array_position(array['CARD', 'ADAPTER', 'READER', 'DESTINATION'], p.kind), l.position, l.name, i.code
                        """)
                .params(productionId, sessionId)
                .query(SessionPart.class)
                .list();
    }

    /** The running sessions and the last one that the person began, or else anybody. */
    List<ReaderUse> readerUses(Membership by) {
        return jdbc.sql("""
                        select s.reader_id, s.adapter_id, r.code as roll_code, s.outcome = 'RUNNING' as running, s.id = last.id as last
                        from offload_session s
                        join offload_roll r on r.id = s.roll_id
                        cross join lateral (
                            select id from offload_session where production_id = :production
                            order by started_by = :person desc, started_at desc limit 1) last
                        where s.production_id = :production and (s.outcome = 'RUNNING' or s.id = last.id)
                        """)
                .param("production", by.productionId())
                .param("person", by.personId())
                .query(ReaderUse.class)
                .list();
    }

    /** That a reader, perhaps with an adapter, reads a roll's card now, or was the last to be used. */
    record ReaderUse(UUID readerId, @Nullable UUID adapterId, String rollCode, boolean running, boolean last) {}
}
