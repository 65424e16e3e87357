package rollbook.forecast;

import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.quantity.DataRate;

/** Rates of formats with a fixed number of bytes per frame and no sound, straight from the table. */
@Component
class FixedRates implements FormatRates {
    private final JdbcClient jdbc;

    FixedRates(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    private record Row(UUID id, long bytesPerSecond) {}

    @Override
    public Map<UUID, DataRate> byFormat(UUID productionId) {
        return jdbc.sql("""
                        select id, (coding_values ->> 'bytesPerFrame')::bigint * frame_rate_numerator / frame_rate_denominator
                            as bytes_per_second
                        from format_recording_format where production_id = ?
                        """).param(productionId).query(Row.class).list().stream()
                .collect(Collectors.toMap(Row::id, row -> DataRate.ofBytesPerSecond(row.bytesPerSecond())));
    }
}
