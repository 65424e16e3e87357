package rollbook.verification;

import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.Condition;
import rollbook.manifest.ReferenceFacts.RoundTrip;
import rollbook.manifest.Verdict;
import rollbook.manifest.VerdictReason;
import rollbook.offload.Copy;
import rollbook.production.ClearingPolicy;
import rollbook.production.ClearingRules;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;
import rollbook.verification.ClearingGate.CopyState;
import rollbook.verification.ClearingGate.Hold;

/**
 * Everything that the clearing of a medium depends on as far as one roll goes, read together.
 *
 * @param subject the kind of medium that is to be cleared
 * @param copies the roll's copies, without one on that medium
 */
record Proof(ClearingRules rules, MediaKind subject, List<Copy> copies, Map<UUID, CopyVerdict> verdicts) {
    /** Reasons that are only told; any other keeps a copy that agrees with its reference from being proven. */
    private static final Set<VerdictReason> REMARKS = EnumSet.of(
            VerdictReason.BYTE_ORDER_REVERSED,
            VerdictReason.ROUND_TRIP_PROVEN,
            VerdictReason.NO_ROUND_TRIP,
            VerdictReason.SAME_LINES_FOR_TWO_COPIES,
            VerdictReason.SPELLED_OTHERWISE,
            VerdictReason.MOVED_FILES,
            VerdictReason.EXTRA_FILES);

    /** What clearing the card itself depends on. */
    Proof(ClearingRules rules, List<Copy> copies, Map<UUID, CopyVerdict> verdicts) {
        this(rules, MediaKind.CARD, copies, verdicts);
    }

    /** What clearing another medium depends on that holds a copy of the roll. */
    Proof without(UUID itemId, MediaKind kind) {
        return new Proof(
                rules,
                kind,
                copies.stream().filter(copy -> !copy.itemId().equals(itemId)).toList(),
                verdicts);
    }

    List<Leg> legs() {
        return rules.legs();
    }

    /** The same, without waiting for legs whose media come back into use and so don't keep their copies. */
    Proof ofKeptLegs() {
        return new Proof(rules.withKeptLegs(), subject, copies, verdicts);
    }

    /** What holds the medium; empty if it may be cleared. */
    List<Hold> holds() {
        return ClearingGate.holds(rules, subject, states());
    }

    /** The copies that are there: not those on a medium that was erased since. */
    List<Copy> present() {
        return copies.stream().filter(copy -> !copy.isErased()).toList();
    }

    List<CopyState> states() {
        return present().stream().map(this::state).toList();
    }

    /** The copies that count towards clearing. */
    List<CopyState> counting() {
        ClearingPolicy policy = rules.policy(subject);
        return states().stream()
                .filter(copy -> copy.counts(policy, rules.asOf()))
                .toList();
    }

    CopyState state(Copy copy) {
        CopyVerdict verdict = verdicts.get(copy.id());
        return new CopyState(
                copy.id(),
                copy.itemCode(),
                copy.itemId(),
                copy.itemKind(),
                copy.placeId(),
                copy.offSite(),
                copy.itemCondition() == Condition.GOOD,
                copy.legId(),
                verdict == null ? Verdict.UNKNOWN : verdict.verdict(),
                verdict != null && lacksOnlySourceHash(copy, verdict),
                roundTrip(copy, verdict),
                verdict == null ? null : verdict.checkedAt(),
                verdict == null ? 0 : verdict.counts().wrong(),
                verdict == null ? 0 : verdict.counts().missing());
    }

    private static RoundTrip roundTrip(Copy copy, @Nullable CopyVerdict verdict) {
        if (copy.rendition() == Rendition.AS_RECORDED) {
            return RoundTrip.NOT_NEEDED;
        }
        return verdict == null ? RoundTrip.ABSENT : verdict.roundTrip(Rendition.ENCODED);
    }

    /**
     * Whether the copy agrees, by a document of its own, with another copy's, and nothing speaks against it but that
     * there is no manifest of the card. Two copies that agree speak for each other, so it holds for the reference too.
     */
    private boolean lacksOnlySourceHash(Copy copy, CopyVerdict verdict) {
        return isOnlyWithoutSource(verdict)
                || isReferenceOfOthers(verdict)
                        && copies.stream()
                                .filter(other -> !other.itemId().equals(copy.itemId()))
                                .map(other -> verdicts.get(other.id()))
                                .anyMatch(other -> other != null
                                        && isOnlyWithoutSource(other)
                                        && Objects.equals(other.referencePartId(), verdict.referencePartId()));
    }

    /** Without the card, files that only one of two copies has may as well be missing from the other: they must be equal. */
    private static boolean isOnlyWithoutSource(CopyVerdict verdict) {
        return verdict.verdict() == Verdict.CONSISTENT
                && verdict.counts().extra() == 0
                && dependence(verdict).equals(EnumSet.of(VerdictReason.NO_CARD_CHECKSUMS));
    }

    private static boolean isReferenceOfOthers(CopyVerdict verdict) {
        return verdict.verdict() == Verdict.CONSISTENT
                && dependence(verdict)
                        .equals(EnumSet.of(VerdictReason.NO_CARD_CHECKSUMS, VerdictReason.SAME_DOCUMENT_AS_REFERENCE));
    }

    private static Set<VerdictReason> dependence(CopyVerdict verdict) {
        return EnumSet.complementOf(EnumSet.copyOf(REMARKS)).stream()
                .filter(reason -> verdict.reasons().contains(reason.name()))
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(VerdictReason.class)));
    }

    /** The verdicts of the copies that count towards clearing. */
    List<Long> verdictIds() {
        return counting().stream().map(copy -> id(verdicts.get(copy.copyId()))).toList();
    }

    /** Of these copies, those that count no longer because of their verdict: the verdict that says so, by copy. */
    Map<UUID, Long> lost(Set<UUID> copyIds) {
        Map<UUID, Long> lost = new LinkedHashMap<>();
        copies.stream()
                .filter(copy -> copyIds.contains(copy.id()))
                .filter(copy -> copy.isErased() || !state(copy).agreesAndIsDecoded(rules.policy(subject)))
                .forEach(copy -> lost.put(copy.id(), id(verdicts.get(copy.id()))));
        return lost;
    }

    boolean isErased(UUID copyId) {
        return copies.stream().anyMatch(copy -> copy.id().equals(copyId) && copy.isErased());
    }

    /** The policy in words that need no message file to be understood years later. */
    String policyOnRecord() {
        ClearingPolicy policy = rules.policy(subject);
        return "proven copies: at least %d, on %d items, of %d kinds, at %d places%s; %s; %s; %s; legs needed: %s"
                .formatted(
                        policy.provenCopies(),
                        policy.items(),
                        policy.mediaKinds(),
                        policy.places(),
                        policy.offSite() ? ", one off-site" : "",
                        policy.checkedWithinDays() == null
                                ? "checked at any time"
                                : "checked within %d days".formatted(policy.checkedWithinDays()),
                        policy.sourceHashNeeded()
                                ? "compared with the card"
                                : "compared with the card or with another copy",
                        policy.roundTripNeeded()
                                ? "encoded copies with a round trip only"
                                : "encoded copies with or without a round trip",
                        rules.neededLegs(subject).stream().map(Leg::name).collect(Collectors.joining(", ")));
    }

    private static long id(@Nullable CopyVerdict verdict) {
        if (verdict == null || verdict.id() == null) {
            throw new IllegalStateException("a verdict that was read has an id");
        }
        return verdict.id();
    }
}
