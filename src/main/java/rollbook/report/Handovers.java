package rollbook.report;

import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.production.Membership;
import rollbook.verification.ClearingRecords;
import rollbook.verification.RollProofs;
import rollbook.verification.RollRemarks;

/** Gathers all that is on record of a show, as of one moment, in nine statements. */
@Service
class Handovers {
    private final ReportRows rows;
    private final RollProofs proofs;
    private final RollRemarks remarks;
    private final ClearingRecords acts;
    private final SignOffs signOffs;

    Handovers(ReportRows rows, RollProofs proofs, RollRemarks remarks, ClearingRecords acts, SignOffs signOffs) {
        this.rows = rows;
        this.proofs = proofs;
        this.remarks = remarks;
        this.acts = acts;
        this.signOffs = signOffs;
    }

    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    Handover of(Membership reader) {
        return new Handover(
                reader.code(),
                reader.productionName(),
                reader.zone().getId(),
                rows.days(reader.productionId()),
                proofs.all(reader.productionId()),
                remarks.clips(reader.productionId()),
                acts.all(reader.productionId()),
                rows.media(reader.productionId()),
                signOffs.all(reader.productionId()));
    }
}
