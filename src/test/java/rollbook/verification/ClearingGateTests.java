package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.manifest.ReferenceFacts.RoundTrip;
import rollbook.manifest.Verdict;
import rollbook.production.ClearingPolicy;
import rollbook.production.ClearingRules;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;
import rollbook.verification.ClearingGate.CopyState;
import rollbook.verification.ClearingGate.Hold;

class ClearingGateTests {
    private static final Instant NOW = Instant.parse("2031-03-03T12:00:00Z");
    private static final UUID SET = UUID.randomUUID();
    private static final UUID VAULT = UUID.randomUUID();
    private static final UUID LEG = UUID.randomUUID();

    /**
     * A card may be erased only when at least the set number of verified copies exist without it. Common practice, no
     * source; that copies on one device count once (E-05), and that a failed check (E-06) or a comparison by size alone
     * (E-07) counts for nothing, is this project's reading of it.
     */
    @ParameterizedTest(name = "{0}: set number {1}, copies {2}: erase {3} (common practice, no source)")
    @CsvSource({
        "E-01, 2, PROVEN, false",
        "E-02, 2, PROVEN PROVEN, true",
        "E-03, 3, PROVEN PROVEN, false",
        "E-04, 3, PROVEN PROVEN PROVEN, true",
        "E-06, 2, PROVEN FAILED, false",
        "E-07, 2, SIZE_ONLY SIZE_ONLY, false",
        "besides, 2, PROVEN SIZE_ONLY, false",
        "besides, 2, PROVEN CONSISTENT, false",
        "besides, 2, PROVEN UNKNOWN, false",
        "besides, 1, CONSISTENT CONSISTENT CONSISTENT, false"
    })
    void copiesCountOnceTheyAreProven(String id, int number, String verdicts, boolean cleared) {
        List<CopyState> copies = new ArrayList<>();
        for (String verdict : verdicts.split(" ")) {
            copies.add(copy(Verdict.valueOf(verdict)));
        }
        assertThat(holds(asking(number, 1, 1, 1, false), copies).isEmpty()).isEqualTo(cleared);
    }

    /** E-05: common practice, no source; that the device counts once is this project's reading. */
    @Test
    void twoCopiesOnOneDeviceAreOneItem() {
        UUID device = UUID.randomUUID();
        List<CopyState> copies = List.of(on(device, SET, false), on(device, SET, false));
        assertThat(holds(asking(2, 2, 1, 1, false), copies))
                .extracting(Hold::key)
                .containsExactly("verification.hold.items");
    }

    @Test
    void aCopyThatOnlyLacksAManifestOfTheCardCountsIfThePolicyLetsIt() {
        List<CopyState> copies = List.of(weaker(true, RoundTrip.NOT_NEEDED, NOW), copy(Verdict.PROVEN));
        ClearingPolicy strict = new ClearingPolicy(MediaKind.CARD, 2, 1, 1, 1, false, null, true, true, 0);
        ClearingPolicy lenient = new ClearingPolicy(MediaKind.CARD, 2, 1, 1, 1, false, null, false, true, 0);
        assertThat(holds(strict, copies))
                .extracting(Hold::key)
                .containsExactly("verification.hold.copies", "verification.hold.no-source-hash");
        assertThat(holds(lenient, copies)).isEmpty();
        assertThat(holds(lenient, List.of(weaker(false, RoundTrip.NOT_NEEDED, NOW), copy(Verdict.PROVEN))))
                .as("one that is merely consistent for another reason doesn't")
                .isNotEmpty();
    }

    @Test
    void anEncodedCopyCountsWithARoundTripOrIfThePolicyNeedsNone() {
        Leg encoded = new Leg(LEG, "Tape", MediaKind.TAPE, VAULT, "Vault", Rendition.ENCODED, 60, null, true, 0);
        ClearingPolicy strict = asking(1, 1, 1, 1, false);
        ClearingPolicy lenient = new ClearingPolicy(MediaKind.CARD, 1, 1, 1, 1, false, null, true, false, 0);
        List<CopyState> without = List.of(of(LEG, Verdict.PROVEN, true, RoundTrip.ABSENT));
        assertThat(holds(strict, List.of(encoded), without))
                .extracting(Hold::key)
                .containsExactly(
                        "verification.hold.leg-not-proven",
                        "verification.hold.copies",
                        "verification.hold.items",
                        "verification.hold.kinds",
                        "verification.hold.places",
                        "verification.hold.no-round-trip");
        assertThat(holds(lenient, List.of(encoded), without)).isEmpty();
        assertThat(holds(strict, List.of(encoded), List.of(of(LEG, Verdict.PROVEN, true, RoundTrip.PROVEN))))
                .isEmpty();
        assertThat(holds(lenient, List.of(encoded), List.of(of(LEG, Verdict.FAILED, true, RoundTrip.PROVEN))))
                .as("a bad one holds the card either way")
                .isNotEmpty();
    }

    @Test
    void aCheckOlderThanThePolicyAllowsCountsNoLonger() {
        ClearingPolicy within30 = new ClearingPolicy(MediaKind.CARD, 1, 1, 1, 1, false, 30, true, true, 0);
        Instant thirtyDaysAgo = NOW.minus(Duration.ofDays(30));
        assertThat(holds(within30, List.of(checked(thirtyDaysAgo)))).isEmpty();
        assertThat(holds(within30, List.of(checked(thirtyDaysAgo.minusSeconds(1)))))
                .extracting(Hold::key)
                .contains("verification.hold.copies", "verification.hold.checked-long-ago");
        assertThat(holds(asking(1, 1, 1, 1, false), List.of(checked(Instant.EPOCH))))
                .as("unless nobody asks")
                .isEmpty();
    }

    @Test
    void aMediumThatComesBackDoesNotWaitForOthersThatDo() {
        Leg kept = new Leg(LEG, "Vault", MediaKind.DRIVE, VAULT, "Vault", Rendition.AS_RECORDED, 100, null, true, 0);
        Leg returns = new Leg(SET, "Shuttle", MediaKind.DRIVE, SET, "Set", Rendition.AS_RECORDED, 100, 5, true, 0);
        ClearingPolicy drives = new ClearingPolicy(MediaKind.DRIVE, 1, 1, 1, 1, false, null, true, true, 0);
        ClearingPolicy cards = asking(1, 1, 1, 1, false);
        List<CopyState> inVault = List.of(of(LEG, Verdict.PROVEN, true, RoundTrip.NOT_NEEDED));
        assertThat(holds(drives, List.of(kept, returns), inVault)).isEmpty();
        assertThat(holds(cards, List.of(kept, returns), inVault)).isNotEmpty();
    }

    @Test
    void kindsPlacesAndOffSiteAreAskedForOfTheProvenCopiesTogether() {
        CopyState drive = on(UUID.randomUUID(), SET, false);
        assertThat(holds(asking(1, 1, 2, 2, true), List.of(drive)))
                .extracting(Hold::key)
                .containsExactly("verification.hold.kinds", "verification.hold.places", "verification.hold.off-site");
        CopyState tape = new CopyState(
                UUID.randomUUID(),
                "TAPE-1",
                UUID.randomUUID(),
                MediaKind.TAPE,
                VAULT,
                true,
                true,
                null,
                Verdict.PROVEN,
                false,
                RoundTrip.NOT_NEEDED,
                NOW,
                0,
                0);
        assertThat(holds(asking(1, 1, 2, 2, true), List.of(drive, tape))).isEmpty();
    }

    @Test
    void aLegThatIsNeededWaitsForItsOwnCopyWhateverElseIsProven() {
        Leg needed = new Leg(LEG, "Vault", MediaKind.DRIVE, VAULT, "Vault", Rendition.AS_RECORDED, 100, null, true, 0);
        List<CopyState> others = List.of(copy(Verdict.PROVEN), copy(Verdict.PROVEN), copy(Verdict.PROVEN));
        assertThat(holds(asking(2, 1, 1, 1, false), List.of(needed), others))
                .extracting(Hold::key)
                .containsExactly("verification.hold.leg-no-copy");
        List<CopyState> withLeg = new ArrayList<>(others);
        withLeg.add(of(LEG, Verdict.PROVEN, true, RoundTrip.NOT_NEEDED));
        assertThat(holds(asking(2, 1, 1, 1, false), List.of(needed), withLeg)).isEmpty();
    }

    @Test
    void anEncodedCopyWithoutARoundTripCountsForNothing() {
        List<CopyState> encoded = List.of(
                of(null, Verdict.PROVEN, true, RoundTrip.ABSENT), of(null, Verdict.PROVEN, true, RoundTrip.ABSENT));
        assertThat(holds(asking(1, 1, 1, 1, false), encoded)).isNotEmpty();
    }

    @Test
    void aBadCopyHoldsTheCardUnlessItsMediumIsOutOfUse() {
        List<CopyState> withBad = List.of(copy(Verdict.PROVEN), copy(Verdict.PROVEN), copy(Verdict.INCOMPLETE));
        assertThat(holds(asking(2, 1, 1, 1, false), withBad))
                .extracting(Hold::key)
                .containsExactly("verification.hold.incomplete");
        List<CopyState> quarantined = List.of(
                copy(Verdict.PROVEN), copy(Verdict.PROVEN), of(null, Verdict.INCOMPLETE, false, RoundTrip.NOT_NEEDED));
        assertThat(holds(asking(2, 1, 1, 1, false), quarantined)).isEmpty();
    }

    @Test
    void aCopyOnAMediumThatCanNotBeReliedOnCountsForNothing() {
        List<CopyState> copies = List.of(copy(Verdict.PROVEN), of(null, Verdict.PROVEN, false, RoundTrip.NOT_NEEDED));
        assertThat(holds(asking(2, 1, 1, 1, false), copies)).isNotEmpty();
    }

    /** Whatever else holds: what clears the card has at least as many proven copies on good media as are asked for. */
    @Test
    void nothingIsEverClearedOnLessThanThePolicyAsksFor() {
        long seed = new SplittableRandom().nextLong();
        SplittableRandom random = new SplittableRandom(seed);
        int cleared = 0;
        for (int round = 0; round < 20_000; round++) {
            ClearingPolicy policy =
                    asking(random.nextInt(1, 4), random.nextInt(1, 4), 1, random.nextInt(1, 3), random.nextBoolean());
            List<CopyState> copies = new ArrayList<>();
            for (int i = random.nextInt(6); i > 0; i--) {
                copies.add(any(random));
            }
            if (holds(policy, copies).isEmpty()) {
                cleared++;
                List<CopyState> proof = copies.stream()
                        .filter(copy -> copy.verdict() == Verdict.PROVEN
                                && copy.itemUsable()
                                && copy.roundTrip() != RoundTrip.ABSENT)
                        .toList();
                assertThat(proof.size())
                        .as("seed %d, round %d", seed, round)
                        .isGreaterThanOrEqualTo(policy.provenCopies());
                assertThat(proof.stream().map(CopyState::itemId).distinct().count())
                        .as("seed %d, round %d", seed, round)
                        .isGreaterThanOrEqualTo(policy.items());
                assertThat(proof.stream().map(CopyState::placeId).distinct().count())
                        .as("seed %d, round %d", seed, round)
                        .isGreaterThanOrEqualTo(policy.places());
                assertThat(!policy.offSite() || proof.stream().anyMatch(CopyState::offSite))
                        .as("seed %d, round %d", seed, round)
                        .isTrue();
            }
        }
        assertThat(cleared).as("the rounds get both answers").isBetween(100, 19_900);
    }

    private static List<Hold> holds(ClearingPolicy policy, List<CopyState> copies) {
        return holds(policy, List.of(), copies);
    }

    private static List<Hold> holds(ClearingPolicy policy, List<Leg> legs, List<CopyState> copies) {
        ClearingRules rules = new ClearingRules(Map.of(policy.subject(), policy), legs, NOW);
        return ClearingGate.holds(rules, policy.subject(), copies);
    }

    private static ClearingPolicy asking(int copies, int items, int kinds, int places, boolean offSite) {
        return new ClearingPolicy(MediaKind.CARD, copies, items, kinds, places, offSite, null, true, true, 0);
    }

    private static CopyState copy(Verdict verdict) {
        return of(null, verdict, true, RoundTrip.NOT_NEEDED);
    }

    private static CopyState on(UUID item, UUID place, boolean offSite) {
        return new CopyState(
                UUID.randomUUID(),
                "DRIVE",
                item,
                MediaKind.DRIVE,
                place,
                offSite,
                true,
                null,
                Verdict.PROVEN,
                false,
                RoundTrip.NOT_NEEDED,
                NOW,
                0,
                0);
    }

    private static CopyState of(@Nullable UUID leg, Verdict verdict, boolean usable, RoundTrip roundTrip) {
        return new CopyState(
                UUID.randomUUID(),
                "DRIVE",
                UUID.randomUUID(),
                MediaKind.DRIVE,
                SET,
                false,
                usable,
                leg,
                verdict,
                false,
                roundTrip,
                NOW,
                1,
                1);
    }

    private static CopyState weaker(boolean lacksOnlySourceHash, RoundTrip roundTrip, Instant checkedAt) {
        return new CopyState(
                UUID.randomUUID(),
                "DRIVE",
                UUID.randomUUID(),
                MediaKind.DRIVE,
                SET,
                false,
                true,
                null,
                Verdict.CONSISTENT,
                lacksOnlySourceHash,
                roundTrip,
                checkedAt,
                0,
                0);
    }

    private static CopyState checked(Instant at) {
        return new CopyState(
                UUID.randomUUID(),
                "DRIVE",
                UUID.randomUUID(),
                MediaKind.DRIVE,
                SET,
                false,
                true,
                null,
                Verdict.PROVEN,
                false,
                RoundTrip.NOT_NEEDED,
                at,
                0,
                0);
    }

    private static CopyState any(SplittableRandom random) {
        boolean vault = random.nextBoolean();
        // Mostly proven copies on good media, or hardly anything would ever be cleared.
        Verdict verdict =
                random.nextInt(4) == 0 ? Verdict.values()[random.nextInt(Verdict.values().length)] : Verdict.PROVEN;
        return new CopyState(
                UUID.randomUUID(),
                "DRIVE",
                new UUID(0, random.nextInt(4)),
                MediaKind.DRIVE,
                vault ? VAULT : SET,
                vault,
                random.nextInt(6) > 0,
                null,
                verdict,
                random.nextInt(6) == 0,
                random.nextInt(6) > 0 ? RoundTrip.NOT_NEEDED : RoundTrip.ABSENT,
                NOW,
                1,
                1);
    }
}
