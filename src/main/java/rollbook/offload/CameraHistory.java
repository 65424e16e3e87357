package rollbook.offload;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** What the cameras recorded before, to propose what they record next. */
@Repository
class CameraHistory {
    private final JdbcClient jdbc;

    CameraHistory(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The codes of a camera's rolls, in the order of their loading. */
    List<String> codesOfCamera(UUID productionId, UUID cameraId) {
        return jdbc.sql(
                        "select code from offload_roll where production_id = ? and camera_id = ? order by loaded_at, code")
                .params(productionId, cameraId)
                .query(String.class)
                .list();
    }

    /** The format in which each camera recorded last. */
    Map<UUID, UUID> lastFormats(UUID productionId) {
        Map<UUID, UUID> formats = new HashMap<>();
        jdbc.sql("""
                        select distinct on (camera_id) camera_id, format_id from offload_roll
                        where production_id = ? order by camera_id, loaded_at desc
                        """).param(productionId).query(row -> {
            formats.put(row.getObject("camera_id", UUID.class), row.getObject("format_id", UUID.class));
        });
        return formats;
    }
}
