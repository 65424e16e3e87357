package rollbook.offload;

import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import rollbook.schedule.RecordedRolls;

/** The bytes of rolls, for the pages of shooting days. */
@Component
class RecordedOnDays implements RecordedRolls {
    private final JdbcClient jdbc;

    RecordedOnDays(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<Recorded> recorded(UUID productionId) {
        return jdbc.sql("select day_id, format_id, minutes, size_bytes from offload_roll where production_id = ?")
                .param(productionId)
                .query(Recorded.class)
                .list();
    }
}
