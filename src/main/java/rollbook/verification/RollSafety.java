package rollbook.verification;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import rollbook.offload.Copy;
import rollbook.verification.ClearingGate.CopyState;
import rollbook.verification.StorageLevels.Kept;

/**
 * How safe a roll would be without its card.
 *
 * @param threeTwoOne whether there are three copies on two kinds of media with one off-site
 * @param storage NDSA storage level
 * @param integrity NDSA integrity level
 */
record RollSafety(boolean threeTwoOne, SafetyLevel storage, SafetyLevel integrity) {

    static RollSafety of(Proof proof, Habits habits) {
        List<Kept> kept = proof.present().stream()
                .map(copy -> kept(copy, proof.state(copy)))
                .toList();
        return new RollSafety(
                StorageLevels.isThreeTwoOne(kept), StorageLevels.of(kept), IntegrityLevels.of(practice(proof, habits)));
    }

    private static Kept kept(Copy copy, CopyState state) {
        return new Kept(
                copy.itemId(),
                copy.itemKind().name(),
                copy.placeId(),
                copy.offSite(),
                copy.threat(),
                state.isProven(),
                false);
    }

    private static IntegrityLevels.Practice practice(Proof proof, Habits habits) {
        List<Copy> usable = proof.present().stream()
                .filter(copy -> proof.state(copy).itemUsable())
                .toList();
        boolean any = !usable.isEmpty();
        Instant now = proof.rules().asOf();
        return new IntegrityLevels.Practice(
                proof.verdicts().values().stream().anyMatch(verdict -> verdict.referencePartId() != null),
                habits.virusChecked(),
                any && usable.stream().allMatch(copy -> proof.state(copy).isProven()),
                habits.writeBlocked(),
                any && usable.stream().allMatch(copy -> isOnTime(proof.state(copy), habits.recheck(), now)),
                any && usable.stream().allMatch(copy -> isCheckedSince(copy, proof.state(copy))),
                proof.states().stream().noneMatch(CopyState::isKnownBad));
    }

    private static boolean isOnTime(CopyState copy, RecheckPlan plan, Instant now) {
        Integer days = plan.days(copy.kind());
        Instant checked = copy.checkedAt();
        return days != null
                && checked != null
                && !checked.plus(Duration.ofDays(days)).isBefore(now);
    }

    private static boolean isCheckedSince(Copy copy, CopyState state) {
        Instant disturbed = copy.disturbedAt();
        Instant checked = state.checkedAt();
        return disturbed == null || checked != null && !checked.isBefore(disturbed);
    }
}
