package rollbook.verification;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.offload.Copy;
import rollbook.offload.Encoding;
import rollbook.offload.ReductionHabit;
import rollbook.offload.Rolls;
import rollbook.production.Rendition;
import rollbook.web.Display;

/** What encoding made of a roll: its size against that of the others, and the verdict on the decoded files. */
@Component
class EncodingViews {
    private final Rolls rolls;
    private final Display display;

    EncodingViews(Rolls rolls, Display display) {
        this.rolls = rolls;
        this.display = display;
    }

    /**
     * What is known of the roll's encoding.
     *
     * @param roundTrip the verdict on the decoded files, or null if there is none
     * @param share encoded bytes for a recorded one, or null if either isn't known
     * @param habit what the show's other rolls have, where this one lies far from it; else null
     */
    record EncodingView(
            @Nullable CopyVerdict roundTrip,
            List<String> reasons,
            @Nullable Encoding size,
            @Nullable BigDecimal share,
            @Nullable ReductionHabit habit) {}

    /** Null if nothing of the roll is encoded. */
    @Nullable
    EncodingView of(
            UUID production, UUID rollId, List<CopyVerdict> history, List<Copy> all, List<RollDocument> documents) {
        CopyVerdict roundTrip = history.stream()
                .filter(verdict -> verdict.copyId() == null)
                .findFirst()
                .orElse(null);
        boolean encoded = all.stream().anyMatch(copy -> copy.rendition() == Rendition.ENCODED)
                || documents.stream().anyMatch(one -> one.subject() == Subject.ENCODED_OUTPUT);
        if (!encoded && roundTrip == null) {
            return null;
        }
        List<Encoding> encodings = rolls.encodings(production);
        Encoding size = encodings.stream()
                .filter(one -> one.rollId().equals(rollId))
                .findFirst()
                .orElse(null);
        return new EncodingView(
                roundTrip,
                roundTrip == null ? List.of() : ReasonKeys.texts(display, roundTrip),
                size,
                size == null ? null : ReductionHabit.share(size),
                size == null ? null : missedHabit(size, encodings));
    }

    /** The habit of the show's other rolls, if this one is far from it. */
    private static @Nullable ReductionHabit missedHabit(Encoding size, List<Encoding> encodings) {
        return ReductionHabit.of(encodings.stream()
                        .filter(other -> !other.rollId().equals(size.rollId()))
                        .toList())
                .filter(habit -> habit.isFarFrom(size))
                .orElse(null);
    }
}
