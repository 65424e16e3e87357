package rollbook.schedule;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.springframework.validation.Errors;
import rollbook.format.NamedFormat;
import rollbook.format.RecordingFormats;
import rollbook.production.Camera;
import rollbook.production.CameraUnits;

/** Makes the tables in which the minutes of a unit's day are planned. */
@Component
class PlanGrids {
    private final CameraUnits units;
    private final RecordingFormats formats;

    PlanGrids(CameraUnits units, RecordingFormats formats) {
        this.units = units;
        this.formats = formats;
    }

    PlanGrid of(UUID productionId, UUID unitId, List<PlannedMinutes> plans) {
        return PlanGrid.of(
                cameras(productionId, unitId, plans),
                formats.list(productionId),
                plans.stream()
                        .map(plan -> new CameraPlan(plan.cameraId(), plan.formatId(), plan.minutes()))
                        .toList());
    }

    PlanGrid read(
            UUID productionId, UUID unitId, List<PlannedMinutes> plans, Map<String, String> typed, Errors errors) {
        List<NamedFormat> all = formats.list(productionId);
        return PlanGrid.read(cameras(productionId, unitId, plans), all, typed, errors);
    }

    /** The unit's cameras, and those of other units that are lent for the day. */
    private List<Camera> cameras(UUID productionId, UUID unitId, List<PlannedMinutes> plans) {
        Set<UUID> planned = plans.stream().map(PlannedMinutes::cameraId).collect(Collectors.toSet());
        return units.cameras(productionId).stream()
                .filter(camera -> camera.unitId().equals(unitId) || planned.contains(camera.id()))
                .toList();
    }
}
