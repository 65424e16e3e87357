package rollbook.verification;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.manifest.ClipSummary;
import rollbook.manifest.FrameSequence;
import rollbook.manifest.NumberRange;
import rollbook.manifest.ReadManifest;
import rollbook.manifest.RollSummary;
import rollbook.manifest.RollWarning;
import rollbook.schedule.DayState;
import rollbook.schedule.ShootingDays;

/** What the parts of documents tell of a roll by themselves: their clips, and what a person should look at. */
@Repository
class ClipSummaries {
    private static final int BATCH = 1_000;
    private static final int GAPS_KEPT = 20;
    /** Clocks are wrong, and time zones differ. */
    private static final Duration CLOCKS_DIFFER = Duration.ofDays(1);

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;
    private final ShootingDays days;

    ClipSummaries(JdbcClient jdbc, JdbcTemplate batches, ShootingDays days) {
        this.jdbc = jdbc;
        this.days = days;
        this.batches = batches;
    }

    /** What the production knows that a document may speak of, sent at that time. */
    ReadManifest.Known known(UUID productionId, Collection<String> rollCodes, Instant sentAt) {
        Instant firstDay = days.list(productionId).stream()
                .filter(day -> day.state() != DayState.CANCELLED)
                .findFirst()
                .map(day -> day.date().atStartOfDay(ZoneOffset.UTC).toInstant().minus(CLOCKS_DIFFER))
                .orElse(null);
        return new ReadManifest.Known(rollCodes, firstDay, sentAt.plus(CLOCKS_DIFFER));
    }

    /** Puts on record what was seen of a part while its document was read. */
    @Transactional(propagation = Propagation.MANDATORY)
    void write(UUID productionId, UUID partId, RollSummary summary) {
        batches.batchUpdate("""
                insert into verification_clip (part_id, production_id, clip, folder, files, size_bytes, first_frame,
                    last_frame, missing_frames, gaps)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                """, summary.clips(), BATCH, (row, clip) -> {
            FrameSequence frames =
                    clip.sequences().isEmpty() ? null : clip.sequences().get(0);
            row.setObject(1, partId);
            row.setObject(2, productionId);
            row.setString(3, clip.clip());
            row.setString(4, clip.folder());
            row.setLong(5, clip.files());
            row.setObject(6, clip.sizeBytes(), Types.BIGINT);
            row.setObject(7, frames == null ? null : frames.first(), Types.INTEGER);
            row.setObject(8, frames == null ? null : frames.last(), Types.INTEGER);
            row.setLong(9, clip.missingFrames());
            row.setString(10, gaps(clip));
        });
        batches.batchUpdate("""
                insert into verification_part_warning (part_id, production_id, kind, count, examples) values (?, ?, ?, ?, ?)
                """, summary.warnings(), BATCH, (row, warning) -> {
            row.setObject(1, partId);
            row.setObject(2, productionId);
            row.setString(3, warning.kind().name());
            row.setLong(4, warning.count());
            row.setArray(
                    5,
                    row.getConnection().createArrayOf("text", warning.examples().toArray()));
        });
    }

    /** The first gaps of all the clip's sequences, for people; a clip may have very many. */
    private static String gaps(ClipSummary clip) {
        List<String> gaps = clip.sequences().stream()
                .flatMap(frames -> frames.gaps().stream())
                .limit(GAPS_KEPT + 1L)
                .map(NumberRange::toString)
                .toList();
        return gaps.size() > GAPS_KEPT
                ? String.join(", ", gaps.subList(0, GAPS_KEPT)) + ", …"
                : String.join(", ", gaps);
    }

    /** What was noticed in some parts. */
    List<RollWarning> warnings(UUID productionId, List<UUID> partIds) {
        if (partIds.isEmpty()) {
            return List.of();
        }
        return jdbc.sql("""
                        select kind, count, examples from verification_part_warning
                        where production_id = :production and part_id in (:parts)
                        """)
                .param("production", productionId)
                .param("parts", partIds)
                .query((row, number) -> warning(row))
                .list();
    }

    /**
     * What the documents about a roll tell.
     *
     * @param warnings of the card's documents; of those of its copies while there are none of the card
     * @param clips of the card's documents, or of its copies while there are none; each once
     * @param listed as each document lists them, with the other rolls that they may belong to
     */
    record Told(List<RollWarning> warnings, List<Clip> clips, List<LogChecks.ListedClip> listed) {
        static final Told NOTHING = new Told(List.of(), List.of(), List.of());
    }

    /**
     * What a document lists of a clip.
     *
     * @param gaps the first of the ranges of frames that are left out, as people read them
     */
    record Clip(
            String name,
            String folder,
            long files,
            @Nullable Long sizeBytes,
            @Nullable Integer firstFrame,
            @Nullable Integer lastFrame,
            long missingFrames,
            String gaps) {}

    private static final String TOLD = """
            with said as (
                select distinct a.roll_id, a.part_id, a.subject = 'CARD' as of_card from verification_assignment a
                where a.production_id = :production and %s
                  and not exists (select 1 from verification_assignment later where later.replaces = a.id))
            select s.roll_id, s.part_id, s.of_card, null as clip, null as folder, null::bigint as files, null::bigint as size_bytes,
                   null::int as first_frame, null::int as last_frame, null::bigint as missing_frames, null as gaps,
                   null::text[] as other_rolls, null as named_by, w.kind, w.count, w.examples
            from said s left join verification_part_warning w on w.part_id = s.part_id
            union all
            select s.roll_id, s.part_id, s.of_card, c.clip, c.folder, c.files, c.size_bytes, c.first_frame, c.last_frame,
                   c.missing_frames, c.gaps,
                   array(select distinct r.code from verification_clip o
                         join verification_assignment b on b.part_id = o.part_id and b.roll_id <> s.roll_id
                         join offload_roll r on r.id = b.roll_id
                         where o.production_id = :production and o.clip = c.clip
                           and not exists (select 1 from verification_assignment later where later.replaces = b.id)
                         order by r.code),
                   (select r.code from offload_roll r
                    where r.production_id = :production and r.id <> s.roll_id
                      and upper(r.code) = regexp_replace(c.clip, 'C[0-9]+$', '')),
                   null, null, null
            from said s join verification_clip c on c.part_id = s.part_id
            order by clip, kind, part_id
            """;

    /** What is told of a roll by what is assigned to it now, in one statement. */
    Told told(UUID productionId, UUID rollId) {
        return told(jdbc.sql(TOLD.formatted("a.roll_id = :roll"))
                        .param("production", productionId)
                        .param("roll", rollId))
                .getOrDefault(rollId, Told.NOTHING);
    }

    /** The same of each roll of a day that anything is told of. */
    Map<UUID, Told> toldOfDay(UUID productionId, UUID dayId) {
        return told(jdbc.sql(TOLD.formatted("a.roll_id in (select r.id from offload_roll r where r.day_id = :day)"))
                .param("production", productionId)
                .param("day", dayId));
    }

    /** How many clips the documents about each roll list: those about its card, or about its copies while there are none. */
    Map<UUID, Integer> counts(UUID productionId) {
        Map<UUID, Integer> counts = new LinkedHashMap<>();
        jdbc.sql("""
                        select a.roll_id,
                               case when bool_or(a.subject = 'CARD') then count(distinct c.clip) filter (where a.subject = 'CARD')
                                    else count(distinct c.clip) end as clips
                        from verification_assignment a left join verification_clip c on c.part_id = a.part_id
                        where a.production_id = ? and a.roll_id is not null
                          and not exists (select 1 from verification_assignment later where later.replaces = a.id)
                        group by a.roll_id
                        """).param(productionId).query(row -> {
            counts.put(row.getObject("roll_id", UUID.class), row.getInt("clips"));
        });
        return counts;
    }

    private static Map<UUID, Told> told(JdbcClient.StatementSpec statement) {
        Map<UUID, Telling> tellings = new LinkedHashMap<>();
        statement.query(row -> {
            tellings.computeIfAbsent(row.getObject("roll_id", UUID.class), id -> new Telling())
                    .add(row);
        });
        Map<UUID, Told> told = new LinkedHashMap<>();
        tellings.forEach((rollId, telling) -> told.put(rollId, telling.told()));
        return told;
    }

    /** What one roll's rows tell. */
    private static final class Telling {
        private final List<RollWarning> ofCard = new ArrayList<>();
        private final List<RollWarning> ofCopies = new ArrayList<>();
        private final List<LogChecks.ListedClip> listed = new ArrayList<>();
        private final Map<String, Clip> clipsOfCard = new LinkedHashMap<>();
        private final Map<String, Clip> clipsOfCopies = new LinkedHashMap<>();
        private boolean cardIsListed;

        void add(ResultSet row) throws SQLException {
            boolean card = row.getBoolean("of_card");
            cardIsListed |= card;
            if (row.getString("clip") != null) {
                listed.add(listedClip(row));
                Clip clip = clip(row);
                (card ? clipsOfCard : clipsOfCopies).putIfAbsent(clip.name(), clip);
            } else if (row.getString("kind") != null) {
                (card ? ofCard : ofCopies).add(warning(row));
            }
        }

        Told told() {
            return cardIsListed
                    ? new Told(ofCard, List.copyOf(clipsOfCard.values()), listed)
                    : new Told(ofCopies, List.copyOf(clipsOfCopies.values()), listed);
        }
    }

    private static Clip clip(ResultSet row) throws SQLException {
        return new Clip(
                row.getString("clip"),
                row.getString("folder"),
                row.getLong("files"),
                row.getObject("size_bytes", Long.class),
                row.getObject("first_frame", Integer.class),
                row.getObject("last_frame", Integer.class),
                row.getLong("missing_frames"),
                row.getString("gaps"));
    }

    private static LogChecks.ListedClip listedClip(ResultSet row) throws SQLException {
        return new LogChecks.ListedClip(
                row.getString("clip"),
                row.getBoolean("of_card"),
                row.getLong("files"),
                row.getObject("size_bytes", Long.class),
                texts(row.getArray("other_rolls")),
                row.getString("named_by"));
    }

    private static RollWarning warning(ResultSet row) throws SQLException {
        return new RollWarning(
                RollWarning.Kind.valueOf(row.getString("kind")), row.getLong("count"), texts(row.getArray("examples")));
    }

    private static List<String> texts(@Nullable Array array) throws SQLException {
        return array == null ? List.of() : List.of((String[]) array.getArray());
    }
}
