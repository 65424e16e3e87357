package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
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

    private static final String OF_CARD = """
            select card.card_state,
                   (select string_agg(m.condition, ' ' order by m.code) from inventory_item m where m.id = any (:media)) as conditions,
                   r.id as roll, r.id is not null and exists (
                       select 1 from scheduled_tasks where task_name = 'judge-roll'
                         and task_instance like r.production_id || '/' || r.id || '/%') as ordered,
                   array(select concat_ws('|', c.id, c.item_id, coalesce(v.verdict, 'NEVER'), coalesce(v.extra, 0),
                                          array_to_string(v.reasons, ' '))
                         from offload_copy c
                         left join lateral (select * from verification_verdict v where v.copy_id = c.id
                                            order by v.id desc limit 1) v on true
                         where c.roll_id = r.id) as copies,
                   c.id as clearance, w.clearance_id is not null as withdrawn, e.clearance_id is not null as erased,
                   o.clearance_id is not null as without_proof,
                   array(select v.copy_id from verification_verdict v where v.id = any (c.verdict_ids)) as relied_on,
                   array(select a.copy_id from verification_alarm a
                         where a.production_id = r.production_id and a.roll_id = r.id and not a.card_erased) as alarmed_before,
                   array(select a.copy_id from verification_alarm a
                         where a.production_id = r.production_id and a.roll_id = r.id and a.card_erased) as alarmed_after,
                   q.id is not null as asked, q.approved, q.withdrawn as taken_back
            from inventory_item card
            left join offload_roll r on r.card_id = card.id
            left join lateral (select * from verification_clearance c where c.roll_id = r.id
                               order by c.cleared_at desc, c.id limit 1) c on true
            left join verification_clearance_withdrawal w on w.clearance_id = c.id
            left join verification_erasure e on e.clearance_id = c.id
            left join verification_override_approval o on o.clearance_id = c.id
            left join lateral (select q.id, exists (select 1 from verification_override_approval a where a.request_id = q.id) as approved,
                                      exists (select 1 from verification_override_withdrawal x where x.request_id = q.id) as withdrawn
                               from verification_override_request q where q.roll_id = r.id
                               order by q.requested_at desc limit 1) q on true
            where card.id = :card order by r.loaded_at
            """;

    private final JdbcClient jdbc;

    GateRecord(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    String told(UUID card, List<UUID> media) {
        StringJoiner told = new StringJoiner("; ");
        jdbc.sql(OF_CARD)
                .param("card", card)
                .param("media", media.toArray(UUID[]::new))
                .query((row, number) -> {
                    if (number == 0) {
                        told.add(row.getString("card_state"));
                        told.add(row.getString("conditions"));
                    }
                    return row.getObject("roll") == null ? told : told.add(roll(row, media));
                })
                .list();
        return told.toString();
    }

    private static String roll(ResultSet row, List<UUID> media) throws SQLException {
        List<Copy> copies = new ArrayList<>();
        for (String copy : (String[]) row.getArray("copies").getArray()) {
            copies.add(Copy.parse(copy));
        }
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
        return judged(copies, media)
                + "; "
                + GateRoll.told(
                        row.getBoolean("ordered"),
                        cleared,
                        row.getBoolean("without_proof"),
                        media(row, "relied_on", copies, media),
                        media(row, "alarmed_before", copies, media),
                        media(row, "alarmed_after", copies, media),
                        asked);
    }

    private static String judged(List<Copy> copies, List<UUID> media) {
        StringJoiner judged = new StringJoiner(" ");
        for (UUID medium : media) {
            judged.add(copies.stream()
                    .filter(copy -> copy.itemId().equals(medium))
                    .map(copy -> copy.judged().name())
                    .findFirst()
                    .orElse("-"));
        }
        return judged.toString();
    }

    /** The media of the copies that a column names, a bit each. */
    private static int media(ResultSet row, String column, List<Copy> copies, List<UUID> media) throws SQLException {
        List<UUID> copyIds = List.of((UUID[]) row.getArray(column).getArray());
        int bits = 0;
        for (Copy copy : copies) {
            if (copyIds.contains(copy.id())) {
                bits |= 1 << media.indexOf(copy.itemId());
            }
        }
        return bits;
    }

    private record Copy(UUID id, UUID itemId, Judged judged) {
        static Copy parse(String text) {
            String[] columns = text.split("\\|", -1);
            String reasons = columns.length < 5 ? "" : columns[4];
            return new Copy(
                    UUID.fromString(columns[0]),
                    UUID.fromString(columns[1]),
                    judged(columns[2], columns[3].equals("0"), reasons));
        }

        private static Judged judged(String verdict, boolean noMore, String reasonsInWords) {
            if (!verdict.equals(Verdict.CONSISTENT.name())) {
                return Judged.valueOf(verdict);
            }
            Set<String> reasons = new HashSet<>(List.of(reasonsInWords.split(" ")));
            reasons.retainAll(DEPENDENCE);
            if (reasons.equals(Set.of("NO_CARD_CHECKSUMS"))) {
                return noMore ? Judged.WITHOUT_SOURCE : Judged.MORE_WITHOUT_SOURCE;
            }
            return reasons.equals(Set.of("NO_CARD_CHECKSUMS", "SAME_DOCUMENT_AS_REFERENCE"))
                    ? Judged.REFERENCE_WITHOUT_SOURCE
                    : Judged.CONSISTENT;
        }
    }
}
