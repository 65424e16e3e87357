package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.inventory.Condition;
import rollbook.inventory.MediaItem;
import rollbook.inventory.Ownership;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;

class CandidateTests {
    private static final UUID PLACE = UUID.randomUUID();
    private static final Leg LEG = new Leg(
            UUID.randomUUID(), "Shuttle", MediaKind.DRIVE, PLACE, "Set", Rendition.AS_RECORDED, 100, null, true, 0);

    private final MediaItem stray = item("DRIVE-0", MediaKind.DRIVE, null, 100);
    private final MediaItem first = item("DRIVE-1", MediaKind.DRIVE, LEG.id(), 100);
    private final MediaItem second = item("DRIVE-2", MediaKind.DRIVE, LEG.id(), 100);
    private final MediaItem tape = item("TAPE-1", MediaKind.TAPE, null, 100);
    private final MediaItem reader = item("READER-1", MediaKind.READER, null, null);

    @Test
    void aLegIsOfferedItsKindWithItsPoolFirst() {
        assertThat(of(LEG, Map.of(), Set.of(), null))
                .extracting(candidate -> candidate.item().code())
                .containsExactly("DRIVE-1", "DRIVE-2", "DRIVE-0");
        assertThat(of(null, Map.of(), Set.of(), null))
                .extracting(candidate -> candidate.item().code())
                .containsExactly("DRIVE-0", "DRIVE-1", "DRIVE-2", "TAPE-1");
    }

    @Test
    void roomIsCapacityLessCopiesAndNeverLessThanNothing() {
        List<Candidate> candidates = of(LEG, Map.of(first.id(), 60L, second.id(), 130L), Set.of(), 40L);
        assertThat(candidates).extracting(Candidate::freeBytes).containsExactly(40L, 0L, 100L);
        assertThat(candidates).extracting(Candidate::tooLittle).containsExactly(false, true, false);
        assertThat(of(LEG, Map.of(first.id(), 60L), Set.of(), 41L))
                .extracting(Candidate::tooLittle)
                .containsExactly(true, false, false);
    }

    @Test
    void aCopyThatIsWrittenOverNeedsNoMoreRoom() {
        assertThat(of(LEG, Map.of(first.id(), 100L), Set.of(first.id()), 40L)
                        .get(0)
                        .tooLittle())
                .isFalse();
    }

    @Test
    void theLastUsedIsLikeliestWhileItHasRoomThenTheFirstOfThePool() {
        assertThat(likeliest(Map.of(), second.id())).isEqualTo("DRIVE-2");
        assertThat(likeliest(Map.of(), stray.id())).isEqualTo("DRIVE-0");
        assertThat(likeliest(Map.of(second.id(), 70L), second.id())).isEqualTo("DRIVE-1");
        assertThat(likeliest(Map.of(), null)).isEqualTo("DRIVE-1");
        assertThat(likeliest(Map.of(first.id(), 70L, second.id(), 70L), second.id()))
                .isEqualTo("none");
    }

    @Test
    void nothingIsLikelyForALegThatHasItsCopy() {
        assertThat(Candidate.likeliest(of(LEG, Map.of(), Set.of(), 40L), first.id(), true))
                .isEmpty();
    }

    private String likeliest(Map<UUID, Long> used, @Nullable UUID last) {
        return Candidate.likeliest(of(LEG, used, Set.of(), 40L), last, false)
                .map(candidate -> candidate.item().code())
                .orElse("none");
    }

    private List<Candidate> of(@Nullable Leg leg, Map<UUID, Long> used, Set<UUID> holding, @Nullable Long neededBytes) {
        return Candidate.of(leg, List.of(stray, first, second, reader, tape), used, holding, neededBytes);
    }

    private static MediaItem item(String code, MediaKind kind, @Nullable UUID legId, @Nullable Integer capacity) {
        return new MediaItem(
                UUID.randomUUID(),
                code,
                "",
                kind,
                "test model",
                capacity == null ? null : capacity.longValue(),
                null,
                null,
                Ownership.BOUGHT,
                "",
                null,
                null,
                legId,
                PLACE,
                "Set",
                false,
                "",
                Condition.GOOD,
                null,
                0);
    }
}
