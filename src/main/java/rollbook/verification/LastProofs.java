package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.inventory.Condition;
import rollbook.manifest.Verdict;
import rollbook.web.Display;

/** Which rolls on media have no proven copy anywhere else: such a medium mustn't leave. */
@Repository
public class LastProofs {
    private final JdbcClient jdbc;
    private final Display display;

    LastProofs(JdbcClient jdbc, Display display) {
        this.jdbc = jdbc;
        this.display = display;
    }

    /** A roll with a copy on a medium, and what there is of it on other media. */
    public record OnMedium(UUID itemId, UUID rollId, String rollCode, List<OtherCopy> others) {
        /** Whether no other medium in good condition holds a proven copy. */
        public boolean isLast() {
            return others.stream().noneMatch(OtherCopy::proves);
        }
    }

    /** @param lacksRoundTrip an encoded copy without proof that the encoding lost nothing */
    public record OtherCopy(String itemCode, Condition condition, Verdict verdict, boolean lacksRoundTrip) {
        boolean proves() {
            return condition == Condition.GOOD && verdict == Verdict.PROVEN && !lacksRoundTrip;
        }
    }

    /** Of every roll on the media, those of a medium together and by their codes; in one statement. */
    public List<OnMedium> of(UUID productionId, Collection<UUID> itemIds) {
        Map<List<UUID>, OnMedium> found = new LinkedHashMap<>();
        jdbc.sql("""
                        select here.item_id, r.id as roll_id, r.code as roll_code, i.code as other_code, i.condition,
                               newest.verdict, other.rendition = 'ENCODED'
                                   and not coalesce('ROUND_TRIP_PROVEN' = any (newest.reasons), false) as lacks_round_trip
                        from (select distinct item_id, roll_id from offload_copy
                              where production_id = :production and item_id = any (:items) and erased_at is null) here
                        join offload_roll r on r.id = here.roll_id
                        left join offload_copy other
                            on other.roll_id = here.roll_id and other.item_id <> here.item_id and other.erased_at is null
                        left join inventory_item i on i.id = other.item_id
                        left join lateral (select v.verdict, v.reasons from verification_verdict v where v.copy_id = other.id
                                           order by v.id desc limit 1) newest on true
                        order by here.item_id, r.code, i.code
                        """)
                .param("production", productionId)
                .param("items", itemIds.toArray(UUID[]::new))
                .query(row -> {
                    add(row, found);
                });
        return List.copyOf(found.values());
    }

    private static void add(ResultSet row, Map<List<UUID>, OnMedium> found) throws SQLException {
        UUID item = row.getObject("item_id", UUID.class);
        UUID roll = row.getObject("roll_id", UUID.class);
        OnMedium here = found.get(List.of(item, roll));
        if (here == null) {
            here = new OnMedium(item, roll, row.getString("roll_code"), new ArrayList<>());
            found.put(List.of(item, roll), here);
        }
        String verdict = row.getString("verdict");
        if (row.getString("other_code") != null) {
            here.others()
                    .add(new OtherCopy(
                            row.getString("other_code"),
                            Condition.valueOf(row.getString("condition")),
                            verdict == null ? Verdict.UNKNOWN : Verdict.valueOf(verdict),
                            row.getBoolean("lacks_round_trip")));
        }
    }

    /** Where else the roll is, and what is lacking there. */
    public String elsewhere(OnMedium roll) {
        return roll.others().isEmpty()
                ? display.text("verification.elsewhere.none")
                : String.join(" ", roll.others().stream().map(this::words).toList());
    }

    private String words(OtherCopy copy) {
        if (copy.condition() != Condition.GOOD) {
            return display.text("verification.elsewhere.condition." + copy.condition(), copy.itemCode());
        }
        String lack = copy.lacksRoundTrip() && copy.verdict() == Verdict.PROVEN
                ? "NO_ROUND_TRIP"
                : copy.verdict().name();
        return display.text("verification.elsewhere." + lack, copy.itemCode());
    }
}
