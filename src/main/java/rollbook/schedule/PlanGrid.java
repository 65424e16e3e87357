package rollbook.schedule;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.springframework.validation.Errors;
import rollbook.format.NamedFormat;
import rollbook.production.Camera;

/**
 * The minutes of a day as a table to fill in: a row per camera, a column per format. An empty cell plans nothing.
 *
 * @param plan what was typed, as far as it can be read
 */
record PlanGrid(List<String> formats, List<Row> rows, List<CameraPlan> plan) {
    private static final Pattern MINUTES = Pattern.compile("\\d{1,4}(\\.\\d{1,2})?");
    private static final BigDecimal WHOLE_DAY = BigDecimal.valueOf(24 * 60);

    record Row(String camera, List<Cell> cells) {}

    record Cell(String name, String camera, String format, String value, boolean wrong) {}

    /** As it is planned now. */
    static PlanGrid of(List<Camera> cameras, List<NamedFormat> formats, List<CameraPlan> plan) {
        Map<String, String> values = plan.stream()
                .collect(Collectors.toMap(
                        line -> name(line.cameraId(), line.formatId()), line -> DayTotals.text(line.minutes())));
        return fill(cameras, formats, values, plan, List.of());
    }

    /** As it was typed; what can't be minutes of a day is reported and kept as it is. */
    static PlanGrid read(List<Camera> cameras, List<NamedFormat> formats, Map<String, String> typed, Errors errors) {
        List<CameraPlan> plan = new ArrayList<>();
        List<String> wrong = new ArrayList<>();
        for (Camera camera : cameras) {
            for (NamedFormat format : formats) {
                String name = name(camera.id(), format.id());
                String text = typed.getOrDefault(name, "").strip();
                if (text.isEmpty()) {
                    continue;
                }
                if (!MINUTES.matcher(text).matches() || new BigDecimal(text).compareTo(WHOLE_DAY) > 0) {
                    wrong.add(name);
                    errors.reject(
                            "schedule.invalid.minutes", new Object[] {camera.letter(), format.name(), text}, null);
                } else if (new BigDecimal(text).signum() > 0) {
                    plan.add(new CameraPlan(camera.id(), format.id(), new BigDecimal(text)));
                }
            }
        }
        return fill(cameras, formats, typed, plan, wrong);
    }

    private static PlanGrid fill(
            List<Camera> cameras,
            List<NamedFormat> formats,
            Map<String, String> values,
            List<CameraPlan> plan,
            List<String> wrong) {
        List<Row> rows = cameras.stream()
                .map(camera -> new Row(
                        camera.letter(),
                        formats.stream()
                                .map(format -> {
                                    String name = name(camera.id(), format.id());
                                    return new Cell(
                                            name,
                                            camera.letter(),
                                            format.name(),
                                            values.getOrDefault(name, ""),
                                            wrong.contains(name));
                                })
                                .toList()))
                .toList();
        return new PlanGrid(formats.stream().map(NamedFormat::name).toList(), rows, plan);
    }

    private static String name(UUID cameraId, UUID formatId) {
        return "minutes-" + cameraId + "-" + formatId;
    }

    /** Whether there is anything to fill in. */
    public boolean empty() {
        return rows.isEmpty() || formats.isEmpty();
    }
}
