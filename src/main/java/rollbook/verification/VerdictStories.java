package rollbook.verification;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.offload.Copy;
import rollbook.web.Display;

/** How the verdicts on a roll's copies came one after the other, in words. */
@Component
class VerdictStories {
    private final Display display;

    VerdictStories(Display display) {
        this.display = display;
    }

    /** @param cause what was new when this verdict was given, in words */
    record StepView(VerdictHistory.Step step, String cause, List<String> reasons) {}

    /** @param itemCode the copy's medium, or null for the round trip of the encoding */
    record Story(@Nullable String itemCode, List<StepView> steps) {}

    /** How each copy came to its verdict, and the encoding to its own; what nobody has judged has no story. */
    List<Story> of(List<CopyVerdict> history, List<Copy> all, List<RollDocument> documents) {
        List<CopyVerdict> oldestFirst = new ArrayList<>(history);
        Collections.reverse(oldestFirst);
        List<Story> stories = new ArrayList<>();
        for (Copy copy : all) {
            stories.add(story(copy.itemCode(), copy.id(), oldestFirst, documents));
        }
        Story roundTrip = story(null, null, oldestFirst, documents);
        if (!roundTrip.steps().isEmpty()) {
            stories.add(roundTrip);
        }
        return stories;
    }

    private Story story(
            @Nullable String itemCode,
            @Nullable UUID copyId,
            List<CopyVerdict> oldestFirst,
            List<RollDocument> documents) {
        List<CopyVerdict> own = oldestFirst.stream()
                .filter(verdict -> Objects.equals(verdict.copyId(), copyId))
                .toList();
        return new Story(
                itemCode,
                VerdictHistory.of(own, documents).stream()
                        .map(step -> new StepView(step, cause(step), ReasonKeys.texts(display, step.verdict())))
                        .toList());
    }

    private String cause(VerdictHistory.Step step) {
        RollDocument corrected = step.corrected();
        return corrected == null
                ? display.text("verification.history.cause." + step.cause().name())
                : display.text(
                        "verification.history.cause." + step.cause().name(),
                        corrected.fileName(),
                        String.valueOf(corrected.correctedByName()),
                        String.valueOf(corrected.correctedBecause()));
    }
}
