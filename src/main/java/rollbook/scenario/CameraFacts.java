package rollbook.scenario;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.format.NamedFormat;
import rollbook.quantity.ByteCount;
import rollbook.quantity.Fraction;

/**
 * What cameras are to record on a day.
 *
 * @param planned of the days of one date
 * @param leftOnly whether what was recorded already is taken off
 */
record CameraFacts(
        List<DayRows.Planned> planned, Map<UUID, NamedFormat> formats, List<DayRows.Row> rows, boolean leftOnly) {

    /** @param typeOf the kind of a card by its id, or null */
    List<DayFacts.Camera> list(Function<UUID, @Nullable String> typeOf) {
        Map<UUID, List<DayRows.Planned>> byCamera = new LinkedHashMap<>();
        planned.forEach(plan -> byCamera.computeIfAbsent(plan.cameraId(), camera -> new ArrayList<>())
                .add(plan));
        return byCamera.values().stream().map(plans -> camera(plans, typeOf)).toList();
    }

    /** @param plans of one camera, what it records most first */
    private DayFacts.Camera camera(List<DayRows.Planned> plans, Function<UUID, @Nullable String> typeOf) {
        DayRows.Planned first = plans.get(0);
        BigDecimal minutes = plans.stream().map(DayRows.Planned::minutes).reduce(BigDecimal.ZERO, BigDecimal::add);
        Fraction weighed = plans.stream()
                .map(plan -> format(plan).format().bytesPerSecond().times(Fraction.of(plan.minutes())))
                .reduce(Fraction.ZERO, Fraction::plus);
        BigDecimal left =
                leftOnly ? minutes.subtract(recorded(first.cameraId())).max(BigDecimal.ZERO) : minutes;
        return new DayFacts.Camera(
                first.letter(),
                first.unitName(),
                FigureKind.NUMBER.read(left.toPlainString()),
                ByteCount.roundedUp(weighed.dividedBy(Fraction.of(minutes))).bytes(),
                format(first).format().frameRate().framesPerSecond().toDouble(),
                plans.stream().map(plan -> format(plan).name()).collect(Collectors.joining(", ")),
                usualCards(first.cameraId(), typeOf));
    }

    private NamedFormat format(DayRows.Planned plan) {
        return formats.get(plan.formatId());
    }

    private BigDecimal recorded(UUID cameraId) {
        return of(DayRows.Kind.RECORDED, cameraId).stream()
                .map(row -> row.minutes() == null ? BigDecimal.ZERO : row.minutes())
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private @Nullable String usualCards(UUID cameraId, Function<UUID, @Nullable String> typeOf) {
        UUID card = of(DayRows.Kind.CARDS, cameraId).stream()
                .max(Comparator.comparingLong(DayRows.Row::times))
                .map(DayRows.Row::itemId)
                .orElse(null);
        return card == null ? null : typeOf.apply(card);
    }

    private List<DayRows.Row> of(DayRows.Kind kind, UUID cameraId) {
        return rows.stream()
                .filter(row -> row.kind() == kind && row.thingId().equals(cameraId))
                .toList();
    }
}
