package rollbook.scenario;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.format.NamedFormat;
import rollbook.production.Camera;
import rollbook.quantity.ByteCount;
import rollbook.quantity.Fraction;
import rollbook.schedule.PlannedMinutes;

/**
 * What cameras are to record on a day.
 *
 * @param planned of the days of one date
 * @param leftOnly whether what was recorded already is taken off
 */
record CameraFacts(
        List<Camera> cameras,
        List<PlannedMinutes> planned,
        Map<UUID, NamedFormat> formats,
        List<DayRows.Row> rows,
        boolean leftOnly) {

    /** @param typeOf the kind of a card by its id, or null */
    List<DayFacts.Camera> list(Function<UUID, @Nullable String> typeOf) {
        return cameras.stream()
                .filter(camera -> minutes(camera).signum() > 0)
                .map(camera -> camera(camera, typeOf))
                .toList();
    }

    private List<PlannedMinutes> of(Camera camera) {
        return planned.stream()
                .filter(plan ->
                        plan.cameraId().equals(camera.id()) && plan.minutes().signum() > 0)
                .toList();
    }

    private BigDecimal minutes(Camera camera) {
        return of(camera).stream().map(PlannedMinutes::minutes).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private DayFacts.Camera camera(Camera camera, Function<UUID, @Nullable String> typeOf) {
        List<PlannedMinutes> plans = of(camera);
        BigDecimal minutes = minutes(camera);
        Fraction weighed = plans.stream()
                .map(plan ->
                        formats.get(plan.formatId()).format().bytesPerSecond().times(Fraction.of(plan.minutes())))
                .reduce(Fraction.ZERO, Fraction::plus);
        BigDecimal left = leftOnly ? minutes.subtract(recorded(camera)).max(BigDecimal.ZERO) : minutes;
        return new DayFacts.Camera(
                camera.letter(),
                camera.unitName(),
                FigureKind.NUMBER.read(left.toPlainString()),
                ByteCount.roundedUp(weighed.dividedBy(Fraction.of(minutes))).bytes(),
                formats.get(plans.get(0).formatId())
                        .format()
                        .frameRate()
                        .framesPerSecond()
                        .toDouble(),
                plans.stream().map(plan -> formats.get(plan.formatId()).name()).collect(Collectors.joining(", ")),
                usualCards(camera, typeOf));
    }

    private BigDecimal recorded(Camera camera) {
        return rows.stream()
                .filter(row ->
                        row.kind() == DayRows.Kind.RECORDED && row.thingId().equals(camera.id()))
                .map(row -> row.minutes() == null ? BigDecimal.ZERO : row.minutes())
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private @Nullable String usualCards(Camera camera, Function<UUID, @Nullable String> typeOf) {
        UUID card = rows.stream()
                .filter(row -> row.kind() == DayRows.Kind.CARDS && row.thingId().equals(camera.id()))
                .max(Comparator.comparingLong(DayRows.Row::times))
                .map(DayRows.Row::itemId)
                .orElse(null);
        return card == null ? null : typeOf.apply(card);
    }
}
