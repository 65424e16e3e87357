package rollbook.report;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import rollbook.schedule.ShootingDay;
import rollbook.verification.ClearingRecord;
import rollbook.verification.RollProof;
import rollbook.verification.RollProofs;

/**
 * All that is on record of a show: what whoever takes it over gets to know.
 *
 * @param days without those cancelled, in the order of their dates
 * @param clips of each roll that a document speaks of, by its id
 * @param acts of clearing and erasing, and alarms, in the order of time
 * @param media everything that holds files
 * @param signOffs without what was signed
 */
record Handover(
        String productionCode,
        String productionName,
        String zone,
        List<ReportRows.PlannedDay> days,
        RollProofs.Proofs proofs,
        Map<UUID, Integer> clips,
        List<ClearingRecord> acts,
        List<ReportRows.Medium> media,
        List<SignOff> signOffs) {

    Map<UUID, List<RollProof>> rollsByDay() {
        return proofs.rolls().stream()
                .collect(Collectors.groupingBy(proof -> proof.roll().dayId()));
    }

    FactSheet sheet() {
        List<Fact> facts = new ArrayList<>();
        facts.add(Fact.of(FactKind.PRODUCTION)
                .with(Column.NOTE, productionName + " (" + productionCode + ")")
                .with(Column.PLACE, zone)
                .with(Column.COUNT, proofs.rolls().size())
                .with(Column.BYTES, recordedBytes(proofs.rolls()))
                .build());
        Map<UUID, List<RollProof>> byDay = rollsByDay();
        Map<UUID, ShootingDay> days = new HashMap<>();
        for (ReportRows.PlannedDay planned : this.days) {
            ShootingDay day = planned.day();
            days.put(day.id(), day);
            List<RollProof> rolls = byDay.getOrDefault(day.id(), List.of());
            facts.add(ofDay(FactKind.DAY, day)
                    .with(Column.STATE, day.state())
                    .with(Column.MINUTES, Numbers.plain(planned.minutes()))
                    .with(Column.COUNT, rolls.size())
                    .with(Column.BYTES, recordedBytes(rolls))
                    .with(Column.NOTE, day.note())
                    .build());
        }
        for (RollProof proof : proofs.rolls()) {
            facts.add(ProofFacts.roll(proof, clips.get(proof.roll().id())));
            proof.copies().forEach(copy -> facts.add(ProofFacts.copy(proof, copy, proofs.legs(), true)));
        }
        acts.forEach(act -> facts.add(ProofFacts.act(act)));
        media.forEach(medium -> facts.add(fact(medium)));
        signOffs.stream()
                .filter(signOff -> days.containsKey(signOff.dayId()))
                .forEach(signOff -> facts.add(fact(signOff, days.get(signOff.dayId()))));
        return new FactSheet(facts);
    }

    private static Fact fact(ReportRows.Medium medium) {
        return Fact.of(FactKind.MEDIUM)
                .with(Column.ITEM, medium.code())
                .with(Column.KIND, medium.kind())
                .with(Column.PLACE, medium.placeName())
                .with(Column.STATE, medium.state())
                .with(Column.BYTES, medium.usedBytes())
                .with(Column.COUNT, medium.rolls())
                .with(Column.NOTE, medium.holder())
                .build();
    }

    private static Fact fact(SignOff signOff, ShootingDay day) {
        return ofDay(FactKind.SIGNATURE, day)
                .with(Column.STATE, signOff.stands() ? "stands" : "taken back")
                .with(Column.SHA256, signOff.sha256())
                .with(Column.AT, signOff.signedAt())
                .with(Column.BY, signOff.signedByName())
                .with(Column.NOTE, signOff.remark())
                .build();
    }

    private static Fact.Builder ofDay(FactKind kind, ShootingDay day) {
        return ProofFacts.ofDay(kind, day.unitName(), day.number(), day.date());
    }

    /** As far as the rolls' sizes are known. */
    static BigInteger recordedBytes(List<RollProof> rolls) {
        return rolls.stream()
                .map(proof -> proof.roll().sizeBytes())
                .filter(java.util.Objects::nonNull)
                .map(BigInteger::valueOf)
                .reduce(BigInteger.ZERO, BigInteger::add);
    }
}
