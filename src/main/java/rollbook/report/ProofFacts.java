package rollbook.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.offload.Roll;
import rollbook.production.Leg;
import rollbook.verification.ClearingRecord;
import rollbook.verification.RollProof;
import rollbook.verification.RollProof.CopyProof;
import rollbook.verification.RollProof.ProvingDocument;

/** Rolls, copies and acts of clearing as lines of a report's file: the same in all reports. */
final class ProofFacts {
    private ProofFacts() {}

    static Fact.Builder ofDay(FactKind kind, String unit, int number, LocalDate date) {
        return Fact.of(kind).with(Column.UNIT, unit).with(Column.DAY, number).with(Column.DATE, date);
    }

    /** @param clips null if no document tells */
    static Fact roll(RollProof proof, @Nullable Integer clips) {
        Roll roll = proof.roll();
        return of(FactKind.ROLL, roll)
                .with(Column.STATE, proof.standing())
                .with(Column.MINUTES, Numbers.plain(roll.minutes()))
                .with(Column.BYTES, roll.sizeBytes())
                .with(Column.COUNT, clips)
                .with(
                        Column.REASONS,
                        proof.holdsOnRecord().stream()
                                .map(hold -> hold.replace("verification.hold.", ""))
                                .collect(Collectors.joining("; ")))
                .with(Column.NOTE, roll.note())
                .build();
    }

    /** @param withPlace whether to tell where the medium is now */
    static Fact copy(RollProof proof, CopyProof copy, List<Leg> legs, boolean withPlace) {
        Fact.Builder fact = of(FactKind.COPY, proof.roll())
                .with(Column.ITEM, copy.copy().itemCode())
                .with(Column.KIND, copy.copy().itemKind())
                .with(Column.LEG, legName(copy.copy().legId(), legs))
                .with(Column.RENDITION, copy.copy().rendition())
                .with(Column.STATE, copy.copy().isErased() ? "erased" : "")
                .with(Column.VERDICT, copy.verdict())
                .with(
                        Column.REASONS,
                        copy.reasons().stream().map(Numbers::words).collect(Collectors.joining("; ")))
                .with(Column.CHECKED_AT, copy.checkedAt())
                .with(Column.SHA256, sha256(copy.evidence()))
                .with(Column.REFERENCE_SHA256, sha256(copy.reference()))
                .with(Column.NOTE, copy.note());
        return (withPlace ? fact.with(Column.PLACE, copy.copy().placeName()) : fact).build();
    }

    static Fact act(ClearingRecord act) {
        return Fact.of(FactKind.ACT)
                .with(Column.ROLL, act.rollCode())
                .with(Column.ITEM, act.itemCode())
                .with(Column.STATE, act.kind())
                .with(Column.AT, act.at())
                .with(Column.BY, act.otherName().isEmpty() ? act.byName() : act.otherName() + " and " + act.byName())
                .with(Column.NOTE, act.note())
                .build();
    }

    private static Fact.Builder of(FactKind kind, Roll roll) {
        return ofDay(kind, roll.unitName(), roll.dayNumber(), roll.dayDate())
                .with(Column.ROLL, roll.code())
                .with(Column.CAMERA, roll.cameraLetter())
                .with(Column.CARD, roll.cardCode());
    }

    static String legName(@Nullable UUID legId, List<Leg> legs) {
        return legs.stream()
                .filter(leg -> Objects.equals(leg.id(), legId))
                .map(Leg::name)
                .findFirst()
                .orElse("");
    }

    private static @Nullable String sha256(@Nullable ProvingDocument document) {
        return document == null ? null : document.sha256();
    }
}
