package rollbook.verification;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ReferenceFacts.RoundTrip;
import rollbook.manifest.Verdict;
import rollbook.production.ClearingPolicy;
import rollbook.production.ClearingRules;
import rollbook.production.Leg;
import rollbook.production.MediaKind;

/**
 * Decides whether a medium that holds a roll may be cleared: a pure function of the policy, the copy plan and what is
 * proven now of the roll's copies on other media.
 *
 * <p>A copy counts if its medium is in good condition and its verdict is proven, or as near to it as the policy allows.
 * Besides, a usable copy that is known to be bad holds the medium whatever the number of good ones: while the medium
 * exists it may be the best source to make that copy again.
 */
final class ClearingGate {
    private ClearingGate() {}

    /**
     * A copy as the gate sees it.
     *
     * @param lacksOnlySourceHash whether it would be proven if there were a manifest of the card itself
     * @param roundTrip whether its encoding is proven, if it is encoded
     * @param checkedAt when it was last checked, by the document that speaks for it; null if none does
     */
    record CopyState(
            UUID copyId,
            String itemCode,
            UUID itemId,
            MediaKind kind,
            UUID placeId,
            boolean offSite,
            boolean itemUsable,
            @Nullable UUID legId,
            Verdict verdict,
            boolean lacksOnlySourceHash,
            RoundTrip roundTrip,
            @Nullable Instant checkedAt,
            long wrong,
            long missing) {

        /** Whether it counts towards clearing by a policy at a moment. */
        boolean counts(ClearingPolicy policy, Instant now) {
            return itemUsable && agreesAndIsDecoded(policy) && checkedLately(policy, now);
        }

        /** Proven whatever the policy: read back, compared with the card, its encoding proven too if it is encoded. */
        boolean isProven() {
            return itemUsable && verdict == Verdict.PROVEN && roundTrip != RoundTrip.ABSENT;
        }

        boolean isKnownBad() {
            return itemUsable && (verdict == Verdict.FAILED || verdict == Verdict.INCOMPLETE);
        }

        /** Whether its verdict is good enough for the policy. */
        boolean agrees(ClearingPolicy policy) {
            return verdict == Verdict.PROVEN || lacksOnlySourceHash && !policy.sourceHashNeeded();
        }

        /** The same, and its encoding is proven as far as the policy asks for that. */
        boolean agreesAndIsDecoded(ClearingPolicy policy) {
            return agrees(policy) && encodingProven(policy);
        }

        private boolean encodingProven(ClearingPolicy policy) {
            return roundTrip != RoundTrip.ABSENT || !policy.roundTripNeeded();
        }

        private boolean checkedLately(ClearingPolicy policy, Instant now) {
            Integer days = policy.checkedWithinDays();
            return days == null || checkedAt != null && !checkedAt.isBefore(now.minus(Duration.ofDays(days)));
        }

        /** What keeps a copy that is as good as proven from counting. */
        private Stream<Hold> weaknesses(ClearingPolicy policy, Instant now) {
            if (!itemUsable || verdict != Verdict.PROVEN && !lacksOnlySourceHash) {
                return Stream.empty();
            }
            List<Hold> weaknesses = new ArrayList<>();
            if (!agrees(policy)) {
                weaknesses.add(Hold.of("verification.hold.no-source-hash", itemCode));
            }
            if (!encodingProven(policy)) {
                weaknesses.add(Hold.of("verification.hold.no-round-trip", itemCode));
            }
            if (!checkedLately(policy, now)) {
                weaknesses.add(Hold.of("verification.hold.checked-long-ago", itemCode, days(policy)));
            }
            return weaknesses.stream();
        }

        private static int days(ClearingPolicy policy) {
            Integer days = policy.checkedWithinDays();
            return days == null ? 0 : days;
        }
    }

    /**
     * Something that holds the medium.
     *
     * @param key of the message that says it; {@code args} fill it
     */
    record Hold(String key, List<Object> args) {
        static Hold of(String key, Object... args) {
            return new Hold(key, List.of(args));
        }

        /** The same for two holds that say the same, and for no others. */
        String onRecord() {
            return key + args;
        }
    }

    /**
     * @param copies the roll's copies, without one on the medium itself
     * @return everything that holds a medium of that kind; empty if it may be cleared as far as this roll goes
     */
    static List<Hold> holds(ClearingRules rules, MediaKind subject, Collection<CopyState> copies) {
        ClearingPolicy policy = rules.policy(subject);
        Instant now = rules.asOf();
        List<CopyState> counting =
                copies.stream().filter(copy -> copy.counts(policy, now)).toList();
        List<Hold> holds = new ArrayList<>();
        copies.stream().filter(CopyState::isKnownBad).forEach(copy -> holds.add(badCopy(copy)));
        rules.neededLegs(subject).stream()
                .filter(leg -> counting.stream().noneMatch(copy -> leg.id().equals(copy.legId())))
                .forEach(leg -> holds.add(missingLeg(leg, copies)));
        least(holds, "copies", policy.provenCopies(), counting.size());
        least(holds, "items", policy.items(), different(counting, CopyState::itemId));
        least(holds, "kinds", policy.mediaKinds(), different(counting, CopyState::kind));
        least(holds, "places", policy.places(), different(counting, CopyState::placeId));
        if (policy.offSite() && counting.stream().noneMatch(CopyState::offSite)) {
            holds.add(Hold.of("verification.hold.off-site"));
        }
        if (!holds.isEmpty()) {
            copies.stream().flatMap(copy -> copy.weaknesses(policy, now)).forEach(holds::add);
        }
        return holds;
    }

    private static Hold badCopy(CopyState copy) {
        return copy.verdict() == Verdict.FAILED
                ? Hold.of("verification.hold.failed", copy.itemCode(), copy.wrong())
                : Hold.of("verification.hold.incomplete", copy.itemCode(), copy.missing());
    }

    private static Hold missingLeg(Leg leg, Collection<CopyState> copies) {
        return copies.stream().anyMatch(copy -> leg.id().equals(copy.legId()))
                ? Hold.of("verification.hold.leg-not-proven", leg.name())
                : Hold.of("verification.hold.leg-no-copy", leg.name());
    }

    private static void least(List<Hold> holds, String what, int needed, int have) {
        if (have < needed) {
            holds.add(Hold.of("verification.hold." + what, have, needed));
        }
    }

    private static int different(List<CopyState> copies, Function<CopyState, ?> by) {
        return (int) copies.stream().map(by).distinct().count();
    }
}
