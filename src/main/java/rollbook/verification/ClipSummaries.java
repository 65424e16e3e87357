package rollbook.verification;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.List;
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
import rollbook.manifest.RollSummary;
import rollbook.manifest.RollWarning;

/** What the parts of documents tell of a roll by themselves: their clips, and what a person should look at. */
@Repository
class ClipSummaries {
    private static final int BATCH = 1_000;
    private static final int GAPS_KEPT = 20;

    private final JdbcClient jdbc;
    private final JdbcTemplate batches;

    ClipSummaries(JdbcClient jdbc, JdbcTemplate batches) {
        this.jdbc = jdbc;
        this.batches = batches;
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

    private static RollWarning warning(ResultSet row) throws SQLException {
        return new RollWarning(
                RollWarning.Kind.valueOf(row.getString("kind")), row.getLong("count"), texts(row.getArray("examples")));
    }

    private static List<String> texts(@Nullable Array array) throws SQLException {
        return array == null ? List.of() : List.of((String[]) array.getArray());
    }
}
