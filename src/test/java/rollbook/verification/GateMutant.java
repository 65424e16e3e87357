package rollbook.verification;

import java.util.List;

/**
 * A fault that somebody might build in.
 *
 * @param explored the same fault in what the exploration runs through
 * @param played the fault in the portal
 */
record GateMutant(String name, List<Edit> explored, List<Edit> played) {
    private static final String GATE = "src/main/java/rollbook/verification/ClearingGate.java";
    private static final String PROOF = "src/main/java/rollbook/verification/Proof.java";
    private static final String CLEARANCE = "src/main/java/rollbook/verification/Clearance.java";
    private static final String CLEARANCES = "src/main/java/rollbook/verification/Clearances.java";
    private static final String OVERRIDES = "src/main/java/rollbook/verification/Overrides.java";
    private static final String CHOICE = "src/main/java/rollbook/verification/EvidenceChoice.java";
    private static final String VERDICTS = "src/main/java/rollbook/verification/Verdicts.java";
    private static final String MODEL = "src/test/java/rollbook/verification/GateModel.java";
    private static final String JUDGEMENT = "src/test/java/rollbook/verification/GateJudgement.java";

    /** Some text of a source file, and what stands there instead. */
    record Edit(String file, String from, String to) {}

    /** The gate and the proof are the portal's own in the exploration too; what surrounds them has its like in the model. */
    static final List<GateMutant> ALL = List.of(
            inGate(
                    "counts a copy that is consistent only",
                    GATE,
                    "return verdict == Verdict.PROVEN || lacks",
                    "return verdict.atLeast(Verdict.CONSISTENT) || lacks"),
            inGate(
                    "counts a copy on a medium that is in doubt or lost",
                    PROOF,
                    "copy.itemCondition() == Condition.GOOD,",
                    "true,"),
            inGate(
                    "forgets that a bad copy holds the card",
                    GATE,
                    "copies.stream().filter(CopyState::isKnownBad).forEach(copy -> holds.add(badCopy(copy)));",
                    ""),
            inGate("is content with one copy less", GATE, "if (have < needed) {", "if (have < needed - 1) {"),
            inGate(
                    "forgets the number of copies",
                    GATE,
                    "least(holds, \"copies\", policy.provenCopies(), counting.size());",
                    ""),
            inGate(
                    "forgets the number of items",
                    GATE,
                    "least(holds, \"items\", policy.items(), different(counting, CopyState::itemId));",
                    ""),
            inGate(
                    "counts kinds of media of copies that don’t count",
                    GATE,
                    "different(counting, CopyState::kind)",
                    "different(List.copyOf(copies), CopyState::kind)"),
            inGate(
                    "counts copies for places",
                    GATE,
                    "different(counting, CopyState::placeId)",
                    "different(counting, CopyState::itemId)"),
            inGate(
                    "takes any copy for the one off-site",
                    GATE,
                    "if (policy.offSite() && counting",
                    "if (policy.offSite() && copies"),
            inGate(
                    "asks of a needed leg only that it has a copy",
                    GATE,
                    ".filter(leg -> counting.stream().noneMatch(",
                    ".filter(leg -> copies.stream().noneMatch("),
            inGate(
                    "never needs a manifest of the card",
                    GATE,
                    "lacksOnlySourceHash && !policy.sourceHashNeeded();",
                    "lacksOnlySourceHash;"),
            inGate(
                    "lets a short list speak for a longer one where the card has none",
                    PROOF,
                    "&& verdict.counts().extra() == 0",
                    ""),
            new GateMutant(
                    "doesn’t ask again when the erasure is recorded",
                    List.of(new Edit(
                            MODEL,
                            "|| !roll.withoutProof && (unjudged(number) || proof.holds(this, roll) != 0)\n",
                            "\n")),
                    List.of(new Edit(CLEARANCES, "if (!standing.withoutProof()) {", "if (standing == null) {"))),
            new GateMutant(
                    "doesn’t wait for what is still to be judged",
                    List.of(new Edit(
                            MODEL, "return rolls[ofRoll].judgingOrdered || unread(rolls[ofRoll]);", "return false;")),
                    List.of(new Edit(
                            CLEARANCES,
                            "if (unjudged.isAnything(by.productionId(), rollIds)) {",
                            "if (rollIds == null) {"))),
            new GateMutant(
                    "lets a clearance stand whose proof is lost",
                    List.of(new Edit(
                            MODEL, "if (!roll.withoutProof && proof.holds(this, roll) != 0) {", "if (roll == null) {")),
                    List.of(new Edit(
                            CLEARANCES,
                            "&& !clearance.withoutProof()\n                    && !proof.holds().isEmpty()",
                            "&& clearance == null"))),
            new GateMutant(
                    "raises no alarm once the card is erased",
                    List.of(new Edit(MODEL, "roll.alarmedAfter |= lost;", "")),
                    List.of(new Edit(
                            CLEARANCES,
                            ".filter(clearance -> clearance.withdrawnAt() == null)",
                            ".filter(Clearance::stands)"))),
            new GateMutant(
                    "lets a used clearance serve once more, for whatever is on the card",
                    List.of(
                            new Edit(
                                    MODEL,
                                    "if (roll.cleared != Cleared.STANDS\n                ||",
                                    "if (roll.cleared != Cleared.STANDS && roll.cleared != Cleared.ERASED\n                ||")),
                    List.of(
                            new Edit(
                                    CLEARANCE,
                                    "return withdrawnAt == null && erasedAt == null;",
                                    "return withdrawnAt == null;"),
                            new Edit(
                                    CLEARANCES,
                                    "        if (!roll.onCard()) {\n            throw new Refusal(\"verification.refused.not-on-card\", roll.code(), roll.cardCode());\n        }\n        if (!standing",
                                    "        if (!standing"))),
            new GateMutant(
                    "lets somebody approve what they asked for",
                    List.of(new Edit(MODEL, "|| roll.askedBy == person", "")),
                    List.of(new Edit(
                            OVERRIDES,
                            "if (request.requestedBy().equals(by.personId())) {",
                            "if (request == null) {"))),
            new GateMutant(
                    "approves whatever holds the card by now",
                    List.of(new Edit(MODEL, "|| !isAsAsked(roll)", "")),
                    List.of(new Edit(
                            OVERRIDES,
                            "if (!onRecord(proof.holds()).equals(request.holds())) {",
                            "if (request == null) {"))),
            new GateMutant(
                    "takes back a request and not the clearance that came of it",
                    List.of(new Edit(
                            MODEL,
                            "            roll.cleared = Cleared.WITHDRAWN;\n            card = CardState.HELD;\n        }\n        roll.asked",
                            "        }\n        roll.asked")),
                    List.of(new Edit(
                            CLEARANCES, "withdraw(by.productionId(), clearance, \"OVERRIDE_WITHDRAWN\");", ""))),
            new GateMutant(
                    "goes by the oldest verdict",
                    List.of(
                            new Edit(
                                    MODEL,
                                    "if (roll.hasCopyOn(medium)) {\n                roll.judged",
                                    "if (roll.hasCopyOn(medium) && roll.judged[medium] == Judged.NEVER) {\n                roll.judged")),
                    List.of(new Edit(
                            VERDICTS,
                            "jdbc.sql(NEWEST + \"and v.roll_id = :roll order by v.copy_id, v.id desc\")",
                            "jdbc.sql(NEWEST + \"and v.roll_id = :roll order by v.copy_id, v.id\")"))),
            new GateMutant(
                    "goes by the oldest document about a copy",
                    List.of(
                            new Edit(
                                    JUDGEMENT,
                                    "for (int document = roll.documents() - 1; document >= roll.documentsBefore[medium]; document--) {",
                                    "for (int document = roll.documentsBefore[medium]; document < roll.documents(); document++) {")),
                    List.of(new Edit(CHOICE, "valid.get(valid.size() - 1)", "valid.get(0)"))),
            new GateMutant(
                    "goes by documents from before the copy was written again",
                    List.of(new Edit(
                            JUDGEMENT,
                            "document >= roll.documentsBefore[medium]; document--",
                            "document >= 0; document--")),
                    List.of(new Edit(CHOICE, "!piece.uploadedAt().isBefore(validFrom)", "piece != null"))),
            new GateMutant(
                    "takes one document for proof of two copies",
                    List.of(new Edit(
                            JUDGEMENT, "described |= other != medium && roll.describesCopy(evidence, other);", "")),
                    List.of(new Edit(CHOICE, "ties.add(Tie.SAME_DOCUMENT_FOR_TWO_COPIES);", ""))));

    private static GateMutant inGate(String name, String file, String from, String to) {
        List<Edit> edits = List.of(new Edit(file, from, to));
        return new GateMutant(name, edits, edits);
    }
}
