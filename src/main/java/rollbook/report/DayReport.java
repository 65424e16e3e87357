package rollbook.report;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import rollbook.schedule.ShootingDay;
import rollbook.verification.ClearingRecord;
import rollbook.verification.RollProof;
import rollbook.verification.RollProofs;
import rollbook.verification.RollRemarks.Remark;
import rollbook.verification.RollRemarks.Remarks;

/**
 * All that is known of a unit's shooting day.
 *
 * @param remarks of each roll, by its id
 * @param acts of clearing and erasing its cards, and alarms, in the order of time
 * @param plan by camera
 */
record DayReport(
        ShootingDay day,
        RollProofs.Proofs proofs,
        Map<UUID, Remarks> remarks,
        List<ClearingRecord> acts,
        List<Planned> plan,
        List<ReportRows.DayMedium> media) {

    /**
     * What a camera was to record.
     *
     * @param bytes a part of a byte counted as a whole one
     */
    record Planned(String camera, BigDecimal minutes, BigInteger bytes) {}

    /** What the day was and what is proven of it: what a person signs. Where media are and how full is not part of it. */
    FactSheet sheet() {
        List<Fact> facts = new java.util.ArrayList<>();
        facts.add(ofDay(FactKind.DAY)
                .with(Column.STATE, day.state())
                .with(Column.COUNT, proofs.rolls().size())
                .with(Column.NOTE, day.note())
                .build());
        plan.forEach(planned -> facts.add(ofDay(FactKind.PLAN)
                .with(Column.CAMERA, planned.camera())
                .with(Column.MINUTES, Numbers.plain(planned.minutes()))
                .with(Column.BYTES, planned.bytes())
                .build()));
        for (RollProof proof : proofs.rolls()) {
            Remarks told = remarks.getOrDefault(proof.roll().id(), Remarks.NONE);
            facts.add(ProofFacts.roll(proof, told.clips()));
            told.remarks().forEach(remark -> facts.add(remark(proof, remark)));
            proof.copies().forEach(copy -> facts.add(ProofFacts.copy(proof, copy, proofs.legs(), false)));
        }
        acts.forEach(act -> facts.add(ProofFacts.act(act)));
        return new FactSheet(facts);
    }

    private Fact remark(RollProof proof, Remark remark) {
        return ofDay(FactKind.REMARK)
                .with(Column.ROLL, proof.roll().code())
                .with(Column.KIND, Numbers.words(remark.kind()))
                .with(Column.COUNT, remark.count())
                .with(Column.NOTE, String.join(", ", remark.examples()))
                .build();
    }

    private Fact.Builder ofDay(FactKind kind) {
        return ProofFacts.ofDay(kind, day.unitName(), day.number(), day.date());
    }
}
