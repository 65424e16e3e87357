package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rollbook.inventory.Condition;
import rollbook.manifest.ReferenceFacts.RoundTrip;
import rollbook.manifest.Verdict;
import rollbook.manifest.VerdictReason;
import rollbook.offload.Copy;
import rollbook.production.ClearingPolicy;
import rollbook.production.ClearingRules;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;

/** What a roll's proof makes of its copies' verdicts. */
class ProofTests {
    private static final Instant NOW = Instant.parse("2031-03-03T12:00:00Z");
    private static final UUID REFERENCE = UUID.randomUUID();

    private final List<Copy> copies = new ArrayList<>();
    private final Map<UUID, CopyVerdict> verdicts = new HashMap<>();

    @Test
    void twoCopiesThatAgreeSpeakForEachOtherWhereThereIsNoManifestOfTheCard() {
        copy(Rendition.AS_RECORDED, Verdict.CONSISTENT, "NO_CARD_CHECKSUMS", "SAME_DOCUMENT_AS_REFERENCE");
        copy(Rendition.AS_RECORDED, Verdict.CONSISTENT, "NO_CARD_CHECKSUMS", "EXTRA_FILES", "CLIP_GAP");
        assertThat(proof(lenient()).holds()).isEmpty();
        assertThat(proof(strict()).holds()).isNotEmpty();
    }

    @Test
    void aReferenceThatNoOtherCopyAgreesWithSpeaksForNothing() {
        copy(Rendition.AS_RECORDED, Verdict.CONSISTENT, "NO_CARD_CHECKSUMS", "SAME_DOCUMENT_AS_REFERENCE");
        copy(Rendition.AS_RECORDED, Verdict.FAILED, "NO_CARD_CHECKSUMS", "DIFFERENT_BYTES");
        assertThat(proof(lenient()).counting()).isEmpty();
    }

    @ParameterizedTest
    @MethodSource
    void anyOtherWeaknessKeepsACopyFromCountingHoweverLenientThePolicy(VerdictReason weakness) {
        copy(Rendition.AS_RECORDED, Verdict.CONSISTENT, "NO_CARD_CHECKSUMS", weakness.name());
        copy(Rendition.AS_RECORDED, Verdict.CONSISTENT, weakness.name());
        assertThat(proof(lenient()).counting()).isEmpty();
    }

    static Stream<VerdictReason> anyOtherWeaknessKeepsACopyFromCountingHoweverLenientThePolicy() {
        return Arrays.stream(VerdictReason.values())
                .filter(VerdictReason::isDependence)
                .filter(reason -> reason != VerdictReason.NO_CARD_CHECKSUMS);
    }

    @Test
    void anEncodedCopysRoundTripIsWhatItsVerdictSays() {
        copy(Rendition.ENCODED, Verdict.PROVEN, "NO_ROUND_TRIP");
        copy(Rendition.ENCODED, Verdict.PROVEN, "ROUND_TRIP_PROVEN");
        copy(Rendition.AS_RECORDED, Verdict.PROVEN);
        assertThat(proof(strict()).states())
                .extracting(ClearingGate.CopyState::roundTrip)
                .containsExactly(RoundTrip.ABSENT, RoundTrip.PROVEN, RoundTrip.NOT_NEEDED);
        assertThat(proof(strict()).counting()).hasSize(2);
    }

    @Test
    void aCopyOnAnErasedMediumIsGoneWhateverItsVerdict() {
        Copy gone = copy(Rendition.AS_RECORDED, Verdict.PROVEN);
        copies.set(
                0,
                new Copy(
                        gone.id(),
                        gone.rollId(),
                        gone.itemId(),
                        gone.itemCode(),
                        gone.itemKind(),
                        gone.itemCondition(),
                        gone.placeId(),
                        gone.placeName(),
                        gone.offSite(),
                        gone.threat(),
                        gone.legId(),
                        gone.rendition(),
                        gone.writtenFrom(),
                        NOW,
                        null));
        assertThat(proof(strict()).states()).isEmpty();
        assertThat(proof(strict()).lost(Set.of(gone.id()))).containsOnlyKeys(gone.id());
    }

    @Test
    void whatClearsAMediumLeavesOutItsOwnCopies() {
        Copy own = copy(Rendition.AS_RECORDED, Verdict.PROVEN);
        Copy other = copy(Rendition.AS_RECORDED, Verdict.PROVEN);
        ClearingPolicy drives = new ClearingPolicy(MediaKind.DRIVE, 1, 1, 1, 1, false, null, true, true, 0);
        ClearingRules rules =
                new ClearingRules(Map.of(MediaKind.CARD, strict(), MediaKind.DRIVE, drives), List.of(), NOW);
        Proof elsewhere = new Proof(rules, copies, verdicts).without(own.itemId(), MediaKind.DRIVE);
        assertThat(elsewhere.counting())
                .extracting(ClearingGate.CopyState::copyId)
                .containsExactly(other.id());
        assertThat(elsewhere.holds()).isEmpty();
    }

    private Proof proof(ClearingPolicy policy) {
        return new Proof(new ClearingRules(Map.of(MediaKind.CARD, policy), List.of(), NOW), copies, verdicts);
    }

    private static ClearingPolicy strict() {
        return new ClearingPolicy(MediaKind.CARD, 2, 2, 1, 1, false, null, true, true, 0);
    }

    private static ClearingPolicy lenient() {
        return new ClearingPolicy(MediaKind.CARD, 2, 2, 1, 1, false, null, false, false, 0);
    }

    private Copy copy(Rendition rendition, Verdict verdict, String... reasons) {
        Copy copy = new Copy(
                UUID.randomUUID(),
                new UUID(0, 1),
                UUID.randomUUID(),
                "DRIVE-" + copies.size(),
                MediaKind.DRIVE,
                Condition.GOOD,
                new UUID(0, 2),
                "Set",
                false,
                "",
                null,
                rendition,
                Instant.EPOCH,
                null,
                null);
        copies.add(copy);
        verdicts.put(
                copy.id(),
                new CopyVerdict(
                        (long) copies.size(),
                        copy.id(),
                        verdict,
                        List.of(reasons),
                        REFERENCE,
                        UUID.randomUUID(),
                        CopyVerdict.Counts.NONE,
                        NOW,
                        NOW));
        return copy;
    }
}
