package rollbook.verification;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import rollbook.manifest.ClipSummary;
import rollbook.manifest.Verdict;

/** Finds clips by the beginning of their names, in everything that was ever listed; one statement, by its index. */
@Service
public class ClipSearch {
    static final int MOST = 20;
    private static final String BEHIND_ALL = "\uffff";

    /** Clips compare byte by byte, so a beginning is a range. What a card's own document lists comes first. */
    static final String SEARCH = """
            with found as (
                select distinct c.clip from verification_clip c
                where c.production_id = :production and c.clip >= :from and c.clip < :to order by c.clip limit :most),
            listed as (
                select distinct on (c.clip, a.roll_id) c.clip, a.roll_id, p.document_id, c.files, c.size_bytes,
                       c.first_frame, c.last_frame, c.missing_frames
                from found f
                join verification_clip c on c.production_id = :production and c.clip = f.clip
                join verification_part p on p.id = c.part_id
                left join verification_assignment a on a.part_id = c.part_id
                    and not exists (select 1 from verification_assignment later where later.replaces = a.id)
                order by c.clip, a.roll_id, a.subject = 'CARD' desc nulls last, c.files desc)
            select l.*, r.code as roll_code, r.day_id, d.number as day_number, d.date as day_date, u.name as unit_name,
                   i.id as item_id, i.code as item_code, pl.name as place_name, v.id as verdict_id, v.verdict,
                   exists (select 1 from verification_assignment a
                           join verification_clip c on c.part_id = a.part_id and c.clip = l.clip
                           where a.roll_id = l.roll_id and a.copy_id = o.id
                             and not exists (select 1 from verification_assignment later where later.replaces = a.id)) as lists_clip
            from listed l
            left join offload_roll r on r.id = l.roll_id
            left join schedule_day d on d.id = r.day_id
            left join production_unit u on u.id = d.unit_id
            left join offload_copy o on o.roll_id = l.roll_id and o.erased_at is null
            left join inventory_item i on i.id = o.item_id
            left join production_place pl on pl.id = i.place_id
            left join lateral (select n.id, n.verdict from verification_verdict n where n.copy_id = o.id
                               order by n.id desc limit 1) v on true
            order by l.clip, r.code, o.created_at, i.code
            """;

    private final JdbcClient jdbc;

    ClipSearch(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * A copy of the roll that the clip belongs to.
     *
     * @param verdict on the whole copy; null if it was never judged
     * @param listsClip whether a document about the copy lists the clip
     */
    record OnCopy(
            UUID itemId,
            String itemCode,
            String placeName,
            @Nullable Long verdictId,
            @Nullable Verdict verdict,
            boolean listsClip) {}

    /** The roll that a clip is listed for. */
    record OfRoll(UUID id, String code, UUID dayId, int dayNumber, LocalDate dayDate, String unitName) {}

    /**
     * A clip as it is listed for one roll.
     *
     * @param roll null while nobody has said what the document describes
     */
    record Found(
            String clip,
            UUID documentId,
            @Nullable OfRoll roll,
            long files,
            @Nullable Long sizeBytes,
            @Nullable Integer firstFrame,
            @Nullable Integer lastFrame,
            long missingFrames,
            List<OnCopy> copies) {}

    /**
     * Some clips in the order of their names.
     *
     * @param next the name after which the others follow, or null if there are no more
     */
    record Page(List<Found> clips, @Nullable String next) {}

    /** Whether there is a clip of which the text is the name, or a file's name, or the beginning of it. */
    public boolean knows(UUID productionId, String text) {
        String beginning = beginning(text);
        return !beginning.isEmpty()
                && jdbc.sql("""
                                select exists (select 1 from verification_clip
                                where production_id = ? and clip >= ? and clip < ?)
                                """)
                        .params(productionId, beginning, beginning + BEHIND_ALL)
                        .query(Boolean.class)
                        .single();
    }

    /** @param after the last name of the page before; empty for the first page */
    Page find(UUID productionId, String text, String after) {
        String beginning = beginning(text);
        String from = after.compareTo(beginning) > 0 ? after + " " : beginning;
        List<Found> found = new ArrayList<>();
        jdbc.sql(SEARCH)
                .param("production", productionId)
                .param("from", from)
                .param("to", beginning + BEHIND_ALL)
                .param("most", MOST + 1)
                .query(row -> {
                    add(found, row);
                });
        found.removeIf(clip -> clip.roll() == null
                && found.stream()
                        .anyMatch(other -> other.roll() != null && other.clip().equals(clip.clip())));
        List<String> names = found.stream().map(Found::clip).distinct().toList();
        if (names.size() <= MOST) {
            return new Page(found, null);
        }
        String next = names.get(MOST - 1);
        return new Page(
                found.stream().filter(clip -> names.indexOf(clip.clip()) < MOST).toList(), next);
    }

    private static void add(List<Found> found, ResultSet row) throws SQLException {
        UUID rollId = row.getObject("roll_id", UUID.class);
        String clip = row.getString("clip");
        Found last = found.isEmpty() ? null : found.get(found.size() - 1);
        if (last == null || !last.clip().equals(clip) || !Objects.equals(rollId(last), rollId)) {
            last = new Found(
                    clip,
                    row.getObject("document_id", UUID.class),
                    rollId == null ? null : roll(rollId, row),
                    row.getLong("files"),
                    row.getObject("size_bytes", Long.class),
                    row.getObject("first_frame", Integer.class),
                    row.getObject("last_frame", Integer.class),
                    row.getLong("missing_frames"),
                    new ArrayList<>());
            found.add(last);
        }
        if (row.getString("item_code") != null) {
            last.copies().add(copy(row));
        }
    }

    private static @Nullable UUID rollId(Found found) {
        OfRoll roll = found.roll();
        return roll == null ? null : roll.id();
    }

    private static OfRoll roll(UUID id, ResultSet row) throws SQLException {
        return new OfRoll(
                id,
                row.getString("roll_code"),
                row.getObject("day_id", UUID.class),
                row.getInt("day_number"),
                row.getDate("day_date").toLocalDate(),
                row.getString("unit_name"));
    }

    private static OnCopy copy(ResultSet row) throws SQLException {
        String verdict = row.getString("verdict");
        return new OnCopy(
                row.getObject("item_id", UUID.class),
                row.getString("item_code"),
                row.getString("place_name"),
                row.getObject("verdict_id", Long.class),
                verdict == null ? null : Verdict.valueOf(verdict),
                row.getBoolean("lists_clip"));
    }

    /** The clip that a file's name holds, else what was typed without what people put between roll and clip. */
    static String beginning(String text) {
        String clip = ClipSummary.nameIn(text.strip());
        return clip != null ? clip : text.replaceAll("[\\s_-]", "").toUpperCase(Locale.ROOT);
    }
}
