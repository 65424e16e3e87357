package rollbook.verification;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.Verdict;
import rollbook.production.ClearingPolicy;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;

/**
 * Decides whether a roll's card may be cleared: a pure function of the policy, the copy plan and what is proven now.
 *
 * <p>A copy counts if its verdict is proven, its medium is in good condition, and it is as recorded: an encoded copy
 * can't share checksums with the card. Besides, a usable copy that is known to be bad holds the card whatever the
 * number of good ones: while the card exists it is the best source to make that copy again.
 */
final class ClearingGate {
    private ClearingGate() {}

    /** A copy as the gate sees it. */
    record CopyState(
            UUID copyId,
            String itemCode,
            UUID itemId,
            MediaKind kind,
            UUID placeId,
            boolean offSite,
            boolean itemUsable,
            @Nullable UUID legId,
            Rendition rendition,
            Verdict verdict,
            long wrong,
            long missing) {

        boolean counts() {
            return itemUsable && rendition == Rendition.AS_RECORDED && verdict == Verdict.PROVEN;
        }

        boolean isKnownBad() {
            return itemUsable && (verdict == Verdict.FAILED || verdict == Verdict.INCOMPLETE);
        }
    }

    /**
     * Something that holds the card.
     *
     * @param key of the message that says it; {@code args} fill it
     */
    record Hold(String key, List<Object> args) {
        static Hold of(String key, Object... args) {
            return new Hold(key, List.of(args));
        }
    }

    /** @return everything that holds the card; empty if it may be cleared */
    static List<Hold> holds(ClearingPolicy policy, List<Leg> legs, Collection<CopyState> copies) {
        List<CopyState> counting = copies.stream().filter(CopyState::counts).toList();
        List<Hold> holds = new ArrayList<>();
        copies.stream().filter(CopyState::isKnownBad).forEach(copy -> holds.add(badCopy(copy)));
        legs.stream()
                .filter(Leg::neededToClear)
                .filter(leg -> counting.stream().noneMatch(copy -> leg.id().equals(copy.legId())))
                .forEach(leg -> holds.add(missingLeg(leg, copies)));
        least(holds, "copies", policy.provenCopies(), counting.size());
        least(holds, "items", policy.items(), different(counting, CopyState::itemId));
        least(holds, "kinds", policy.mediaKinds(), different(counting, CopyState::kind));
        least(holds, "places", policy.places(), different(counting, CopyState::placeId));
        if (policy.offSite() && counting.stream().noneMatch(CopyState::offSite)) {
            holds.add(Hold.of("verification.hold.off-site"));
        }
        return holds;
    }

    private static Hold badCopy(CopyState copy) {
        return copy.verdict() == Verdict.FAILED
                ? Hold.of("verification.hold.failed", copy.itemCode(), copy.wrong())
                : Hold.of("verification.hold.incomplete", copy.itemCode(), copy.missing());
    }

    private static Hold missingLeg(Leg leg, Collection<CopyState> copies) {
        if (leg.rendition() == Rendition.ENCODED) {
            return Hold.of("verification.hold.leg-encoded", leg.name());
        }
        Set<Verdict> verdicts = new HashSet<>();
        copies.stream().filter(copy -> leg.id().equals(copy.legId())).forEach(copy -> verdicts.add(copy.verdict()));
        return verdicts.isEmpty()
                ? Hold.of("verification.hold.leg-no-copy", leg.name())
                : Hold.of("verification.hold.leg-not-proven", leg.name());
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
