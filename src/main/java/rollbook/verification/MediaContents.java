package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.manifest.Verdict;
import rollbook.production.Rendition;

/** What is on media: the rolls, and what is proven of them there and elsewhere. */
@Repository
public class MediaContents {
    /** The documents that speak for the copy: the one that its verdict names, and those that are one statement with it. */
    private static final String MANIFESTS = """
            select array_agg(encode(d.sha256, 'hex') order by d.uploaded_at, d.sequence) as digests
            from verification_document d
            where d.id in (
              select p.document_id from verification_part p where p.id = newest.evidence_part_id
              union
              select other.member_id from verification_part p
              join verification_archive_member m on m.member_id = p.document_id and m.speaks_with is not null
              join verification_archive_member other on other.speaks_with = m.speaks_with
              where p.id = newest.evidence_part_id and other.member_id is not null)
            """;

    private static final String CARD_MANIFESTS = """
            select array_agg(encode(d.sha256, 'hex') order by d.uploaded_at, d.sequence) as digests
            from verification_document d
            where d.id in (
              select p.document_id from verification_assignment a join verification_part p on p.id = a.part_id
              where a.roll_id = r.id and a.subject = 'CARD'
                and not exists (select 1 from verification_assignment later where later.replaces = a.id))
            """;

    private final JdbcClient jdbc;
    private final MediumClearances clearances;

    MediaContents(JdbcClient jdbc, MediumClearances clearances) {
        this.jdbc = jdbc;
        this.clearances = clearances;
    }

    /** The drives, arrays and tapes that somebody may erase now. */
    public Set<UUID> cleared(UUID productionId) {
        return clearances.cleared(productionId);
    }

    /** Of every roll on one of the items, as a copy or on the card itself, all that is there of it; ordered by code. */
    public List<RollCopies> rollsOn(UUID productionId, Collection<UUID> items) {
        if (items.isEmpty()) {
            return List.of();
        }
        Map<UUID, RollCopies> rolls = new LinkedHashMap<>();
        jdbc.sql("""
                        with concerned as (
                          select c.roll_id from offload_copy c
                          where c.production_id = :production and c.item_id in (:items) and c.erased_at is null
                          union
                          select r.id from offload_roll r join inventory_item card on card.id = r.card_id
                          where r.production_id = :production and r.card_id in (:items) and card.card_state <> 'BLANK'
                            and not exists (select 1 from offload_roll later
                                            where later.card_id = r.card_id and later.loaded_at > r.loaded_at))
                        select r.id as roll_id, r.code as roll_code, r.size_bytes, r.encoded_bytes, r.card_id, card.code as card_code,
                               card.card_state, card.condition as card_condition,
                               exists (select 1 from offload_roll later
                                       where later.card_id = r.card_id and later.loaded_at > r.loaded_at) as card_reused,
                               of_card.digests as card_manifests, c.item_id, i.code as item_code, p.name as place_name, p.off_site,
                               i.condition, c.rendition, newest.verdict, newest.decoded, of_copy.digests as manifests
                        from concerned k
                        join offload_roll r on r.id = k.roll_id
                        join inventory_item card on card.id = r.card_id
                        left join lateral (%s) of_card on true
                        left join offload_copy c on c.roll_id = r.id and c.erased_at is null
                        left join inventory_item i on i.id = c.item_id
                        left join production_place p on p.id = i.place_id
                        left join lateral (select v.verdict, 'ROUND_TRIP_PROVEN' = any (v.reasons) as decoded, v.evidence_part_id
                                           from verification_verdict v where v.copy_id = c.id order by v.id desc limit 1) newest on true
                        left join lateral (%s) of_copy on true
                        order by r.code, r.id, i.code, c.rendition
                        """.formatted(CARD_MANIFESTS, MANIFESTS))
                .param("production", productionId)
                .param("items", items)
                .query(row -> {
                    add(rolls, row);
                });
        return List.copyOf(rolls.values());
    }

    private static void add(Map<UUID, RollCopies> rolls, ResultSet row) throws SQLException {
        UUID id = row.getObject("roll_id", UUID.class);
        RollCopies roll = rolls.get(id);
        if (roll == null) {
            roll = new RollCopies(
                    id,
                    row.getString("roll_code"),
                    row.getObject("size_bytes", Long.class),
                    row.getObject("card_id", UUID.class),
                    row.getString("card_code"),
                    card(row),
                    digests(row, "card_manifests"),
                    new ArrayList<>());
            rolls.put(id, roll);
        }
        if (row.getObject("item_id") != null) {
            roll.copies().add(copy(row));
        }
    }

    private static RollCopies.Card card(ResultSet row) throws SQLException {
        CardState state = CardState.valueOf(row.getString("card_state"));
        if (row.getBoolean("card_reused") || state == CardState.BLANK) {
            return RollCopies.Card.ERASED;
        }
        Condition condition = Condition.valueOf(row.getString("card_condition"));
        if (condition != Condition.GOOD && condition != Condition.QUARANTINED) {
            return RollCopies.Card.LOST;
        }
        return state == CardState.CLEAR_TO_ERASE ? RollCopies.Card.CLEARED : RollCopies.Card.HOLDS_ROLL;
    }

    private static RollCopies.CopyAt copy(ResultSet row) throws SQLException {
        Rendition rendition = Rendition.valueOf(row.getString("rendition"));
        Condition condition = Condition.valueOf(row.getString("condition"));
        String verdict = row.getString("verdict");
        boolean decoded = rendition == Rendition.AS_RECORDED || row.getBoolean("decoded");
        return new RollCopies.CopyAt(
                row.getObject("item_id", UUID.class),
                row.getString("item_code"),
                row.getString("place_name"),
                row.getBoolean("off_site"),
                condition,
                rendition,
                row.getObject(rendition == Rendition.AS_RECORDED ? "size_bytes" : "encoded_bytes", Long.class),
                verdict == null ? Verdict.UNKNOWN : Verdict.valueOf(verdict),
                condition == Condition.GOOD && Verdict.PROVEN.name().equals(verdict) && decoded,
                digests(row, "manifests"));
    }

    private static List<String> digests(ResultSet row, String column) throws SQLException {
        return row.getArray(column) == null
                ? List.of()
                : List.of((String[]) row.getArray(column).getArray());
    }
}
