package rollbook.offload;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The recording formats of a production, to choose from. */
@Repository
class KnownFormats {
    private final JdbcClient jdbc;

    KnownFormats(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    List<KnownFormat> list(UUID productionId) {
        return jdbc.sql("""
                        select id, name, null::numeric as bytes_per_second
                        from format_recording_format where production_id = ? order by lower(name)
                        """).param(productionId).query(KnownFormat.class).list();
    }

    Optional<KnownFormat> find(UUID productionId, UUID formatId) {
        return list(productionId).stream()
                .filter(format -> format.id().equals(formatId))
                .findFirst();
    }

    /** What a roll weighs: its bytes if they are known, else an estimate from its minutes; null if that lacks a part. */
    @Nullable
    Long expectedBytes(UUID productionId, Roll roll) {
        return roll.sizeBytes() != null
                ? roll.sizeBytes()
                : find(productionId, roll.formatId())
                        .map(format -> Estimates.bytes(roll.minutes(), format.bytesPerSecond()))
                        .orElse(null);
    }

    /** @param bytesPerSecond what a camera writes in this format; null if it is unknown */
    record KnownFormat(UUID id, String name, @Nullable BigDecimal bytesPerSecond) {}
}
