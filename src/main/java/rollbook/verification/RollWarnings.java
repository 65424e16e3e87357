package rollbook.verification;

import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.manifest.RollWarning;
import rollbook.offload.Roll;
import rollbook.offload.RollSizes;
import rollbook.web.Display;

/** What a person should look at in a roll, in words; a warning proves nothing and holds no card. */
@Component
class RollWarnings {
    private final RollSizes sizes;
    private final Display display;

    RollWarnings(RollSizes sizes, Display display) {
        this.sizes = sizes;
        this.display = display;
    }

    /**
     * @param count how many cases there are
     * @param remark whether something may be wrong; else it is told for completeness
     * @param cut whether there are more cases than examples
     */
    record View(
            RollWarning.Kind kind, String sentence, long count, List<String> examples, boolean cut, boolean remark) {}

    List<View> of(UUID productionId, Roll roll, ClipSummaries.Told told) {
        return of(roll, roll.sizeBytes() == null ? null : sizes.expectedBytes(productionId, roll), told);
    }

    /** @param expected what the roll's minutes make in its format, in bytes; null if nobody knows */
    List<View> of(Roll roll, @Nullable Long expected, ClipSummaries.Told told) {
        return Stream.concat(told.warnings().stream(), LogChecks.of(roll, expected, told.listed()).stream())
                .distinct()
                .sorted(Comparator.comparing(RollWarning::kind))
                .map(warning -> view(warning, roll, expected))
                .toList();
    }

    private View view(RollWarning warning, Roll roll, @Nullable Long expected) {
        return new View(
                warning.kind(),
                sentence(warning, roll, expected),
                warning.count(),
                warning.examples(),
                warning.examples().size() == RollWarning.MOST_EXAMPLES && warning.count() > RollWarning.MOST_EXAMPLES,
                warning.kind().isRemark());
    }

    private String sentence(RollWarning warning, Roll roll, @Nullable Long expected) {
        String key = "verification.warning." + warning.kind().name();
        return switch (warning.kind()) {
            case LARGER_THAN_CARD ->
                display.text(key, amount(roll.sizeBytes()), roll.cardCode(), amount(roll.cardCapacityBytes()));
            case OTHER_THAN_MINUTES ->
                display.text(key, amount(roll.sizeBytes()), display.figure(roll.minutes()), amount(expected));
            default -> display.text(key, warning.count());
        };
    }

    private String amount(@Nullable Long bytes) {
        return bytes == null ? "" : display.amount(bytes);
    }
}
