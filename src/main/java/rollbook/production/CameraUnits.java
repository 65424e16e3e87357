package rollbook.production;

import java.util.List;
import java.util.UUID;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** The units of a production and their cameras. */
@Service
public class CameraUnits {
    private final JdbcClient jdbc;
    private final AuditTrail trail;

    CameraUnits(JdbcClient jdbc, AuditTrail trail) {
        this.jdbc = jdbc;
        this.trail = trail;
    }

    public List<Unit> units(UUID productionId) {
        return jdbc.sql("select id, name from production_unit where production_id = ? order by position, name")
                .param(productionId)
                .query(Unit.class)
                .list();
    }

    public List<Camera> cameras(UUID productionId) {
        return jdbc.sql("""
                        select c.id, c.unit_id, u.name as unit_name, c.letter
                        from production_camera c join production_unit u on u.id = c.unit_id
                        where c.production_id = ? order by u.position, c.letter
                        """).param(productionId).query(Camera.class).list();
    }

    /** @throws Refusal if a unit of that name exists */
    @Transactional
    public UUID addUnit(Membership by, String name) {
        UUID id = UUID.randomUUID();
        int added = jdbc.sql("""
                        insert into production_unit (id, production_id, name, position)
                        select :id, :production, :name, coalesce(max(position), 0) + 1 from production_unit where production_id = :production
                        on conflict do nothing
                        """)
                .param("id", id)
                .param("production", by.productionId())
                .param("name", name)
                .update();
        if (added == 0) {
            throw new Refusal("production.refused.unit-exists", name);
        }
        trail.add(by.act("unit.added", "unit", name, ""));
        return id;
    }

    /** @throws Refusal if the letter is taken in this production */
    @Transactional
    public UUID addCamera(Membership by, UUID unitId, String letter) {
        UUID id = UUID.randomUUID();
        if (units(by.productionId()).stream().noneMatch(unit -> unit.id().equals(unitId))) {
            throw new NotFoundException();
        }
        int added = jdbc.sql(
                        "insert into production_camera (id, production_id, unit_id, letter) values (?, ?, ?, ?) on conflict do nothing")
                .params(id, by.productionId(), unitId, letter)
                .update();
        if (added == 0) {
            throw new Refusal("production.refused.camera-exists", letter);
        }
        trail.add(by.act("camera.added", "camera", letter, ""));
        return id;
    }

    /** @throws Refusal if the unit has shooting days or cameras */
    @Transactional
    public void removeUnit(Membership by, UUID unitId) {
        String name = units(by.productionId()).stream()
                .filter(unit -> unit.id().equals(unitId))
                .findFirst()
                .orElseThrow(NotFoundException::new)
                .name();
        try {
            jdbc.sql("delete from production_unit where production_id = ? and id = ?")
                    .params(by.productionId(), unitId)
                    .update();
        } catch (DataIntegrityViolationException e) {
            throw new Refusal("production.refused.unit-in-use", name);
        }
        trail.add(by.act("unit.removed", "unit", name, ""));
    }

    /** @throws Refusal if the camera is planned or has recorded a roll */
    @Transactional
    public void removeCamera(Membership by, UUID cameraId) {
        String letter = cameras(by.productionId()).stream()
                .filter(camera -> camera.id().equals(cameraId))
                .findFirst()
                .orElseThrow(NotFoundException::new)
                .letter();
        try {
            jdbc.sql("delete from production_camera where production_id = ? and id = ?")
                    .params(by.productionId(), cameraId)
                    .update();
        } catch (DataIntegrityViolationException e) {
            throw new Refusal("production.refused.camera-in-use", letter);
        }
        trail.add(by.act("camera.removed", "camera", letter, ""));
    }
}
