package rollbook.production;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import rollbook.testing.PortalTest;

@PortalTest
class PlanSentencesTests {
    private static final Place SET = new Place(UUID.randomUUID(), "Set", false, "", 0);
    private static final Place VAULT = new Place(UUID.randomUUID(), "Vault", true, "", 0);
    private static final Leg ARRAY = leg("Array", MediaKind.ARRAY, SET, Rendition.AS_RECORDED, null, true);
    private static final Leg SHUTTLE = leg("Shuttle", MediaKind.DRIVE, VAULT, Rendition.AS_RECORDED, 14, true);
    private static final Leg TAPE = leg("Tape", MediaKind.TAPE, VAULT, Rendition.ENCODED, null, false);

    @Autowired
    PlanSentences sentences;

    @Test
    void aLegIsSaidInPlainWords() {
        assertThat(sentences.leg(ARRAY))
                .isEqualTo(
                        "Every roll as recorded, on an array at Set; the medium is kept. No card is cleared before this copy is proven.");
        assertThat(sentences.leg(SHUTTLE)).contains("comes back into use 14 days after the shooting day");
        assertThat(sentences.leg(TAPE))
                .startsWith("Every roll encoded without loss to about 60 % of its bytes, on a tape at Vault;")
                .endsWith("A card may be cleared without it.");
    }

    @Test
    void thePolicyNamesOnlyWhatItAsksFor() {
        assertThat(sentences.policy(rules(asking(1, 1, 1, 1, false)), MediaKind.CARD))
                .isEqualTo("A card may be cleared when one copy is proven.");
        assertThat(sentences.policy(rules(asking(3, 2, 2, 2, true), ARRAY, SHUTTLE, TAPE), MediaKind.CARD))
                .isEqualTo(
                        "A card may be cleared when 3 copies are proven, on 2 different items, on 2 kinds of media, "
                                + "at 2 different places, at least one of them off-site, and every copy of these legs is proven: Array, Shuttle.");
    }

    @Test
    void whatThePolicyLetsCountBesidesProofIsSaidInSentencesOfItsOwn() {
        assertThat(sentences.policy(
                        rules(new ClearingPolicy(MediaKind.CARD, 1, 1, 1, 1, false, 30, false, false, 0)),
                        MediaKind.CARD))
                .isEqualTo("A card may be cleared when one copy is proven, each checked within the last 30 days. "
                        + "Where there is no manifest of the card, copies that agree with each other count too. "
                        + "An encoded copy counts without a round trip.");
    }

    @Test
    void aDriveThatComesBackWaitsForTheLegsThatAreKept() {
        ClearingPolicy drives = new ClearingPolicy(MediaKind.DRIVE, 2, 1, 1, 1, false, null, true, true, 0);
        assertThat(sentences.policy(rules(drives, ARRAY, SHUTTLE, TAPE), MediaKind.DRIVE))
                .isEqualTo(
                        "A drive may be cleared when, of every roll on it, without its own copy, 2 copies are proven, "
                                + "and every copy of these legs is proven: Array.");
    }

    @Test
    void aPolicyThatThePlanFulfilsHasNoGap() {
        assertThat(sentences.gaps(
                        rules(asking(2, 2, 2, 2, true), ARRAY, SHUTTLE, TAPE), MediaKind.CARD, List.of(SET, VAULT)))
                .isEmpty();
    }

    @Test
    void whatTheLegsDoNotGiveIsSaid() {
        assertThat(sentences.gaps(rules(asking(2, 2, 2, 2, true), ARRAY), MediaKind.CARD, List.of(SET, VAULT)))
                .hasSize(4)
                .anyMatch(gap -> gap.contains("2 copies asked for, one leg makes one"))
                .anyMatch(gap -> gap.contains("no leg is at an off-site place"));
    }

    @Test
    void theDriveThatIsClearedFillsNoGapOfItsOwn() {
        ClearingPolicy drives = new ClearingPolicy(MediaKind.DRIVE, 3, 1, 1, 1, false, null, true, true, 0);
        assertThat(sentences.gaps(rules(drives, ARRAY, SHUTTLE, TAPE), MediaKind.DRIVE, List.of(SET, VAULT)))
                .singleElement()
                .asString()
                .contains("3 copies asked for, 2 legs make one each");
    }

    private static ClearingPolicy asking(int copies, int items, int kinds, int places, boolean offSite) {
        return new ClearingPolicy(MediaKind.CARD, copies, items, kinds, places, offSite, null, true, true, 0);
    }

    private static ClearingRules rules(ClearingPolicy policy, Leg... legs) {
        return new ClearingRules(Map.of(policy.subject(), policy), List.of(legs), Instant.EPOCH);
    }

    private static Leg leg(
            String name, MediaKind kind, Place place, Rendition rendition, Integer returnsAfterDays, boolean needed) {
        int percent = rendition == Rendition.ENCODED ? 60 : 100;
        return new Leg(
                UUID.randomUUID(),
                name,
                kind,
                place.id(),
                place.name(),
                rendition,
                percent,
                returnsAfterDays,
                needed,
                0);
    }
}
