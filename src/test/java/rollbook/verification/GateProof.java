package rollbook.verification;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.Condition;
import rollbook.manifest.Verdict;
import rollbook.manifest.VerdictReason;
import rollbook.offload.Copy;
import rollbook.production.ClearingRules;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;
import rollbook.verification.ClearingGate.Hold;
import rollbook.verification.GateRoll.Judged;

/** What the portal's own proof and gate say of a state of the model; each different question is asked once. */
final class GateProof {
    private static final UUID SET = new UUID(1, 0);
    private static final UUID VAULT = new UUID(1, 1);
    private static final UUID ROLL = new UUID(2, 0);

    private final @Nullable Answer[] answers = new @Nullable Answer[GatePolicy.ALL.length << 6 * GateModel.MEDIA];

    private final Map<List<String>, Integer> numbers = new HashMap<>(Map.of(List.of(), 0));

    /**
     * @param holds as a number
     * @param counting the media whose copies count towards clearing, a bit each
     * @param lost those whose copies, once relied on, would raise an alarm
     */
    private record Answer(int holds, int counting, int lost) {}

    /** A number for what holds the card: 0 for nothing, and the same for the same. */
    int holds(GateModel model, GateRoll roll) {
        return answer(model, roll).holds();
    }

    int counting(GateModel model, GateRoll roll) {
        return answer(model, roll).counting();
    }

    int lost(GateModel model, GateRoll roll, int reliedOn) {
        return answer(model, roll).lost() & reliedOn;
    }

    private Answer answer(GateModel model, GateRoll roll) {
        int question = model.policy.ordinal();
        for (int medium = 0; medium < GateModel.MEDIA; medium++) {
            question = question << 6
                    | (roll.hasCopyOn(medium) ? 32 : 0)
                    | (model.conditions[medium] == Condition.GOOD ? 16 : 0)
                    | roll.judged[medium].ordinal();
        }
        Answer known = answers[question];
        if (known == null) {
            known = ask(model, roll);
            answers[question] = known;
        }
        return known;
    }

    private Answer ask(GateModel model, GateRoll roll) {
        List<Copy> copies = new ArrayList<>();
        Map<UUID, CopyVerdict> verdicts = new LinkedHashMap<>();
        Set<UUID> judged = new HashSet<>();
        for (int medium = 0; medium < GateModel.MEDIA; medium++) {
            if (roll.hasCopyOn(medium)) {
                copies.add(copy(medium, model.conditions[medium]));
            }
            if (roll.judged[medium] != Judged.NEVER) {
                verdicts.put(copyId(medium), verdict(medium, roll.judged[medium]));
                judged.add(copyId(medium));
            }
        }
        Proof proof = new Proof(rules(model.policy), copies, verdicts);
        int counting = 0;
        for (long id : proof.verdictIds()) {
            counting |= 1 << id;
        }
        int lost = 0;
        for (long id : proof.lost(judged).values()) {
            lost |= 1 << id;
        }
        return new Answer(number(proof.holds()), counting, lost);
    }

    private int number(List<Hold> holds) {
        List<String> onRecord = holds.stream().map(Hold::onRecord).toList();
        return numbers.computeIfAbsent(onRecord, added -> numbers.size());
    }

    private static ClearingRules rules(GatePolicy policy) {
        List<Leg> legs = policy.neededMedium < 0
                ? List.of()
                : List.of(new Leg(
                        legId(policy.neededMedium),
                        "Needed",
                        MediaKind.DRIVE,
                        SET,
                        "Set",
                        Rendition.AS_RECORDED,
                        100,
                        null,
                        true,
                        0));
        return new ClearingRules(Map.of(MediaKind.CARD, policy.ofCards(0)), legs, Instant.EPOCH);
    }

    private static Copy copy(int medium, Condition condition) {
        boolean tape = medium == GateModel.TAPE;
        return new Copy(
                copyId(medium),
                ROLL,
                new UUID(4, medium),
                "MEDIUM-" + medium,
                tape ? MediaKind.TAPE : MediaKind.DRIVE,
                condition,
                tape ? VAULT : SET,
                tape ? "Vault" : "Set",
                tape,
                "",
                legId(medium),
                Rendition.AS_RECORDED,
                Instant.EPOCH,
                null,
                null);
    }

    private static CopyVerdict verdict(int medium, Judged judged) {
        boolean failed = judged == Judged.FAILED;
        boolean incomplete = judged == Judged.INCOMPLETE;
        return new CopyVerdict(
                (long) medium,
                copyId(medium),
                verdict(judged),
                reasons(judged).stream().map(VerdictReason::name).toList(),
                new UUID(6, 0),
                new UUID(6, medium),
                new CopyVerdict.Counts(
                        1,
                        failed ? 1 : 0,
                        incomplete ? 1 : 0,
                        judged == Judged.MORE_WITHOUT_SOURCE ? 1 : 0,
                        0,
                        0,
                        0,
                        0,
                        0),
                Instant.EPOCH,
                Instant.EPOCH);
    }

    private static Verdict verdict(Judged judged) {
        return switch (judged) {
            case NEVER, UNKNOWN -> Verdict.UNKNOWN;
            case PROVEN -> Verdict.PROVEN;
            case CONSISTENT, WITHOUT_SOURCE, MORE_WITHOUT_SOURCE, REFERENCE_WITHOUT_SOURCE -> Verdict.CONSISTENT;
            case INCOMPLETE -> Verdict.INCOMPLETE;
            case FAILED -> Verdict.FAILED;
        };
    }

    private static List<VerdictReason> reasons(Judged judged) {
        return switch (judged) {
            case CONSISTENT -> List.of(VerdictReason.SAME_DOCUMENT_FOR_TWO_COPIES);
            case WITHOUT_SOURCE -> List.of(VerdictReason.NO_CARD_CHECKSUMS);
            case MORE_WITHOUT_SOURCE -> List.of(VerdictReason.NO_CARD_CHECKSUMS, VerdictReason.EXTRA_FILES);
            case REFERENCE_WITHOUT_SOURCE ->
                List.of(VerdictReason.SAME_DOCUMENT_AS_REFERENCE, VerdictReason.NO_CARD_CHECKSUMS);
            default -> List.of();
        };
    }

    private static UUID copyId(int medium) {
        return new UUID(3, medium);
    }

    private static UUID legId(int medium) {
        return new UUID(5, medium);
    }
}
