package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.inventory.CardState;
import rollbook.manifest.RollWarning;
import rollbook.manifest.RollWarning.Kind;
import rollbook.offload.Roll;
import rollbook.verification.LogChecks.ListedClip;

class LogChecksTests {

    @Test
    void aRollThatFitsItsCardAndItsMinutesHasNoWarnings() {
        assertThat(LogChecks.of(roll(1_000L, 1_000L), 1_000L, List.of(clip("A014C001"))))
                .isEmpty();
        assertThat(LogChecks.of(roll(null, null), null, List.of())).isEmpty();
    }

    @Test
    void filesLargerThanTheCardCannotHaveComeFromIt() {
        assertThat(kinds(LogChecks.of(roll(1_001L, 1_000L), null, List.of()))).containsExactly(Kind.LARGER_THAN_CARD);
        assertThat(LogChecks.of(roll(1_001L, null), null, List.of())).isEmpty();
    }

    /** A tenth: common practice, no source. */
    @Test
    void bytesMayDifferFromMinutesByATenth() {
        assertThat(LogChecks.of(roll(1_100L, null), 1_000L, List.of())).isEmpty();
        assertThat(LogChecks.of(roll(900L, null), 1_000L, List.of())).isEmpty();
        assertThat(kinds(LogChecks.of(roll(1_101L, null), 1_000L, List.of()))).containsExactly(Kind.OTHER_THAN_MINUTES);
        assertThat(kinds(LogChecks.of(roll(899L, null), 1_000L, List.of()))).containsExactly(Kind.OTHER_THAN_MINUTES);
        assertThat(kinds(LogChecks.of(roll(Long.MAX_VALUE, null), 1L, List.of())))
                .containsExactly(Kind.OTHER_THAN_MINUTES);
    }

    @Test
    void aClipThatIsListedForAnotherRollTooIsNamedWithIt() {
        ListedClip twice = new ListedClip("A014C002", true, 1, null, List.of("B001", "A013"), null);
        assertThat(LogChecks.of(roll(null, null), null, List.of(clip("A014C001"), twice, twice)))
                .containsExactly(new RollWarning(Kind.CLIP_IN_TWO_ROLLS, 1, List.of("A014C002 → A013, B001")));
    }

    @Test
    void clipsCalledByAnotherRollAndListsOfTheCardThatDisagreeMeanThatACodeWasUsedTwice() {
        assertThat(LogChecks.of(
                        roll(null, null),
                        null,
                        List.of(
                                new ListedClip("A013C001", false, 1, null, List.of(), "A013"),
                                new ListedClip("A014C001", true, 1, 5L, List.of(), null),
                                new ListedClip("A014C001", true, 1, 6L, List.of(), null),
                                new ListedClip("A014C002", true, 2, null, List.of(), null),
                                new ListedClip("A014C002", true, 3, null, List.of(), null),
                                new ListedClip("A014C003", true, 1, null, List.of(), null),
                                new ListedClip("A014C003", true, 1, 6L, List.of(), null),
                                new ListedClip("A014C004", true, 1, 6L, List.of(), null),
                                new ListedClip("A014C004", false, 9, 9L, List.of(), null))))
                .containsExactly(new RollWarning(Kind.CODE_USED_TWICE, 2, List.of("A013C001 → A013", "A014C001")));
    }

    private static List<Kind> kinds(List<RollWarning> warnings) {
        return warnings.stream().map(RollWarning::kind).toList();
    }

    private static ListedClip clip(String name) {
        return new ListedClip(name, true, 1, null, List.of(), null);
    }

    private static Roll roll(@Nullable Long sizeBytes, @Nullable Long capacityBytes) {
        UUID id = UUID.randomUUID();
        Instant now = Instant.parse("2026-03-04T12:00:00Z");
        return new Roll(
                id,
                "A014",
                id,
                "A",
                id,
                "Main",
                id,
                3,
                LocalDate.of(2026, 3, 4),
                id,
                "CARD-1",
                capacityBytes,
                CardState.EXPOSED,
                true,
                id,
                now,
                now,
                BigDecimal.TEN,
                sizeBytes,
                "",
                1);
    }
}
