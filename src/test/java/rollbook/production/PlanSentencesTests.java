package rollbook.production;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import rollbook.testing.PortalTest;

@PortalTest
class PlanSentencesTests {
    private static final Place SET = new Place(UUID.randomUUID(), "Set", false, 0);
    private static final Place VAULT = new Place(UUID.randomUUID(), "Vault", true, 0);
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
        assertThat(sentences.policy(new ClearingPolicy(1, 1, 1, 1, false, 0), List.of()))
                .isEqualTo("A card may be cleared once one copy as recorded is proven.");
        assertThat(sentences.policy(new ClearingPolicy(3, 2, 2, 2, true, 0), List.of(ARRAY, SHUTTLE, TAPE)))
                .isEqualTo(
                        "A card may be cleared once 3 copies as recorded are proven, on 2 different items, on 2 kinds of media, "
                                + "at 2 different places, at least one of them off-site, and every copy of these legs is proven: Array, Shuttle.");
    }

    @Test
    void aPolicyThatThePlanFulfilsHasNoGap() {
        assertThat(sentences.gaps(
                        new ClearingPolicy(2, 2, 2, 2, true, 0), List.of(ARRAY, SHUTTLE, TAPE), List.of(SET, VAULT)))
                .isEmpty();
    }

    @Test
    void anEncodedLegFillsNoGap() {
        assertThat(sentences.gaps(new ClearingPolicy(2, 2, 2, 2, true, 0), List.of(ARRAY, TAPE), List.of(SET, VAULT)))
                .hasSize(4)
                .anyMatch(gap -> gap.contains("2 copies as recorded asked for, one leg makes one"))
                .anyMatch(gap -> gap.contains("no leg as recorded is at an off-site place"));
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
