package rollbook.report;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.format.NamedFormat;
import rollbook.format.RecordingFormats;
import rollbook.offload.Roll;
import rollbook.quantity.Fraction;
import rollbook.verification.ClearingRecords;
import rollbook.verification.RollProof;
import rollbook.verification.RollProofs;
import rollbook.verification.RollRemarks;

/** Gathers what is known of a shooting day. */
@Service
class DayReports {
    private final ReportRows rows;
    private final RollProofs proofs;
    private final RollRemarks remarks;
    private final ClearingRecords acts;
    private final RecordingFormats formats;

    DayReports(
            ReportRows rows, RollProofs proofs, RollRemarks remarks, ClearingRecords acts, RecordingFormats formats) {
        this.rows = rows;
        this.proofs = proofs;
        this.remarks = remarks;
        this.acts = acts;
        this.formats = formats;
    }

    /**
     * As of one moment.
     *
     * @throws rollbook.web.NotFoundException if this production has no such day
     */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    DayReport of(UUID productionId, UUID dayId) {
        ReportRows.DayRows day = rows.day(productionId, dayId);
        Map<UUID, NamedFormat> byId = formats.byId(productionId);
        RollProofs.Proofs proven = proofs.ofDay(productionId, dayId);
        List<Roll> rolls = proven.rolls().stream().map(RollProof::roll).toList();
        return new DayReport(
                day.day(),
                proven,
                remarks.ofDay(productionId, dayId, rolls, byId),
                acts.ofDay(productionId, dayId),
                planned(day.plan(), byId),
                day.media());
    }

    private static List<DayReport.Planned> planned(List<ReportRows.PlanLine> plan, Map<UUID, NamedFormat> formats) {
        Map<String, BigDecimal> minutes = new TreeMap<>();
        Map<String, Fraction> bytes = new TreeMap<>();
        for (ReportRows.PlanLine line : plan) {
            NamedFormat format = formats.get(line.formatId());
            minutes.merge(line.camera(), line.minutes(), BigDecimal::add);
            bytes.merge(
                    line.camera(), format.format().bytesPerMinute().times(Fraction.of(line.minutes())), Fraction::plus);
        }
        List<DayReport.Planned> planned = new ArrayList<>();
        minutes.forEach((camera, all) ->
                planned.add(new DayReport.Planned(camera, all, bytes.get(camera).ceiling())));
        return planned;
    }
}
