package rollbook.offload;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.format.RecordingFormats;
import rollbook.quantity.ByteCount;
import rollbook.recording.RecordingFormat;
import rollbook.web.Choice;

/** What rolls weigh, by their recording formats. */
@Component
public class RollSizes {
    private static final BigDecimal MILLIS_PER_MINUTE = BigDecimal.valueOf(60_000);

    private final RecordingFormats formats;

    RollSizes(RecordingFormats formats) {
        this.formats = formats;
    }

    /** The formats to choose from. */
    List<Choice> choices(UUID productionId) {
        return formats.list(productionId).stream()
                .map(format -> new Choice(format.id().toString(), format.name()))
                .toList();
    }

    RecordingFormat formatOf(UUID productionId, Roll roll) {
        return formats.get(productionId, roll.formatId()).format();
    }

    /** The roll's bytes if they are known, else an estimate from its minutes; null while it has none. */
    @Nullable
    Long bytes(UUID productionId, Roll roll) {
        return roll.sizeBytes() == null ? expectedBytes(productionId, roll) : roll.sizeBytes();
    }

    /** What the roll's minutes make in its format, in bytes; null while it has no minutes. */
    public @Nullable Long expectedBytes(UUID productionId, Roll roll) {
        return roll.minutes() == null
                ? null
                : estimate(roll.minutes(), formatOf(productionId, roll)).bytes();
    }

    /** What so many minutes make in a format, a part of a byte counted as a whole one. */
    public static ByteCount estimate(BigDecimal minutes, RecordingFormat format) {
        return format.bytesFor(
                Duration.ofMillis(minutes.multiply(MILLIS_PER_MINUTE).longValueExact()));
    }
}
