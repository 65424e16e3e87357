package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.StringJoiner;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.manifest.Verdict;
import rollbook.verification.GateRoll.Asked;
import rollbook.verification.GateRoll.Cleared;
import rollbook.verification.GateRoll.Judged;

/** Reads from the tables what the model tells of its own state. */
final class GateRecord {
    /** Reasons because of which a copy that agrees isn't proven. */
    private static final Set<String> DEPENDENCE = Set.of(
            "SAME_DOCUMENT_AS_REFERENCE",
            "SAME_DOCUMENT_AS_CARD",
            "SAME_DOCUMENT_FOR_TWO_COPIES",
            "NO_CARD_CHECKSUMS",
            "NO_READ_BACK",
            "FLATTENED");

    private static final String ROLL = """
            select (select exists (select 1 from scheduled_tasks where task_name = 'judge-roll'
                                     and task_instance like r.production_id || '/' || r.id || '/%')) as ordered,
                   c.id as clearance, w.clearance_id is not null as withdrawn, e.clearance_id is not null as erased,
                   o.clearance_id is not null as without_proof,
                   array(select v.copy_id from verification_verdict v where v.id = any (c.verdict_ids)) as relied_on,
                   array(select a.copy_id from verification_alarm a where a.roll_id = r.id and not a.card_erased) as alarmed_before,
                   array(select a.copy_id from verification_alarm a where a.roll_id = r.id and a.card_erased) as alarmed_after,
                   q.id is not null as asked, q.approved, q.withdrawn as taken_back
            from offload_roll r
            left join lateral (select * from verification_clearance c where c.roll_id = r.id
                               order by c.cleared_at desc, c.id limit 1) c on true
            left join verification_clearance_withdrawal w on w.clearance_id = c.id
            left join verification_erasure e on e.clearance_id = c.id
            left join verification_override_approval o on o.clearance_id = c.id
            left join lateral (select q.id, exists (select 1 from verification_override_approval a where a.request_id = q.id) as approved,
                                      exists (select 1 from verification_override_withdrawal x where x.request_id = q.id) as withdrawn
                               from verification_override_request q where q.roll_id = r.id
                               order by q.requested_at desc limit 1) q on true
            where r.id = ?
            """;

    private final JdbcClient jdbc;

    GateRecord(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    String told(UUID card, List<UUID> rolls, List<UUID> media) {
        StringJoiner told = new StringJoiner("; ");
        told.add(jdbc.sql("select card_state from inventory_item where id = ?")
                .param(card)
                .query(String.class)
                .single());
        told.add(String.join(
                " ",
                jdbc.sql("select condition from inventory_item where id in (:media) order by code")
                        .param("media", media)
                        .query(String.class)
                        .list()));
        for (UUID roll : rolls) {
            Copies copies = new Copies(roll, media);
            told.add(copies.judged());
            told.add(jdbc.sql(ROLL)
                    .param(roll)
                    .query((row, number) -> roll(row, copies))
                    .single());
        }
        return told.toString();
    }

    private static String roll(ResultSet row, Copies copies) throws SQLException {
        Cleared cleared = row.getObject("clearance") == null
                ? Cleared.NEVER
                : row.getBoolean("withdrawn")
                        ? Cleared.WITHDRAWN
                        : row.getBoolean("erased") ? Cleared.ERASED : Cleared.STANDS;
        Asked asked = !row.getBoolean("asked")
                ? Asked.NEVER
                : row.getBoolean("taken_back")
                        ? Asked.WITHDRAWN
                        : row.getBoolean("approved") ? Asked.APPROVED : Asked.WAITS;
        return GateRoll.told(
                row.getBoolean("ordered"),
                cleared,
                row.getBoolean("without_proof"),
                copies.media(row, "relied_on"),
                copies.media(row, "alarmed_before"),
                copies.media(row, "alarmed_after"),
                asked);
    }

    /** The copies of a roll by their media. */
    private final class Copies {
        private final List<UUID> media;
        private final List<Copy> list;

        private record Copy(UUID id, UUID itemId, String verdict, String reasons, long extra) {}

        Copies(UUID roll, List<UUID> media) {
            this.media = media;
            this.list = jdbc.sql("""
                            select c.id, c.item_id, coalesce(v.verdict, 'NEVER') as verdict,
                                   coalesce(array_to_string(v.reasons, ' '), '') as reasons, coalesce(v.extra, 0) as extra
                            from offload_copy c
                            left join lateral (select * from verification_verdict v where v.copy_id = c.id
                                               order by v.id desc limit 1) v on true
                            where c.roll_id = ?
                            """).param(roll).query(Copy.class).list();
        }

        String judged() {
            StringJoiner judged = new StringJoiner(" ");
            for (UUID medium : media) {
                judged.add(list.stream()
                        .filter(copy -> copy.itemId().equals(medium))
                        .map(copy -> judged(copy).name())
                        .findFirst()
                        .orElse("-"));
            }
            return judged.toString();
        }

        private static Judged judged(Copy copy) {
            if (!copy.verdict().equals(Verdict.CONSISTENT.name())) {
                return Judged.valueOf(copy.verdict());
            }
            Set<String> reasons = new HashSet<>(List.of(copy.reasons().split(" ")));
            reasons.retainAll(DEPENDENCE);
            if (reasons.equals(Set.of("NO_CARD_CHECKSUMS"))) {
                return copy.extra() == 0 ? Judged.WITHOUT_SOURCE : Judged.MORE_WITHOUT_SOURCE;
            }
            return reasons.equals(Set.of("NO_CARD_CHECKSUMS", "SAME_DOCUMENT_AS_REFERENCE"))
                    ? Judged.REFERENCE_WITHOUT_SOURCE
                    : Judged.CONSISTENT;
        }

        int media(ResultSet row, String column) throws SQLException {
            Set<UUID> copyIds = Set.copyOf(new HashSet<>(List.of((UUID[]) row.getArray(column).getArray())));
            int bits = 0;
            for (Copy copy : list) {
                if (copyIds.contains(copy.id())) {
                    bits |= 1 << media.indexOf(copy.itemId());
                }
            }
            return bits;
        }
    }
}
