package rollbook.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.springframework.stereotype.Component;
import rollbook.manifest.Verdict;
import rollbook.production.Membership;
import rollbook.report.ReportWords.Line;
import rollbook.verification.CardStanding;
import rollbook.verification.ClearingRecord;
import rollbook.verification.RollProof;
import rollbook.verification.RollProof.CopyProof;
import rollbook.verification.RollRemarks.Remark;
import rollbook.verification.RollRemarks.Remarks;
import rollbook.web.Display;

/** What is wrong with a day's rolls or may be, the worst first. */
@Component
class DayProblems {
    private final ReportWords words;
    private final Display display;

    DayProblems(ReportWords words, Display display) {
        this.words = words;
        this.display = display;
    }

    List<Line> of(DayReport report, Membership reader, boolean paper) {
        List<Line> lines = new ArrayList<>();
        List<RollProof> rolls = report.proofs().rolls();
        for (ClearingRecord act : report.acts()) {
            boolean without = act.kind() == ClearingRecord.Kind.CLEARED_WITHOUT_PROOF;
            if (without || act.kind() == ClearingRecord.Kind.ALARM) {
                lines.add(new Line(
                        act.rollCode(),
                        DayViews.href(reader, "rolls/" + act.rollId(), paper),
                        display.text("report.problem.on", act.itemCode(), words.what(act))));
            }
        }
        addCopies(lines, rolls, copy -> copy.verdict() == Verdict.FAILED, reader, paper);
        addCopies(lines, rolls, copy -> copy.verdict() == Verdict.INCOMPLETE, reader, paper);
        rolls.stream()
                .filter(proof -> proof.standing() != CardStanding.IN_CAMERA && proof.hasNoDocument())
                .forEach(proof -> lines.add(line(proof, display.text("report.problem.no-document"), reader, paper)));
        addRemarks(lines, report, Remark::doubtful, reader, paper);
        addCopies(lines, rolls, copy -> copy.verdict() == Verdict.SIZE_ONLY, reader, paper);
        addCopies(lines, rolls, copy -> copy.verdict() == Verdict.CONSISTENT, reader, paper);
        addRemarks(lines, report, remark -> !remark.doubtful(), reader, paper);
        return lines;
    }

    private void addCopies(
            List<Line> lines, List<RollProof> rolls, Predicate<CopyProof> wanted, Membership reader, boolean paper) {
        for (RollProof proof : rolls) {
            proof.copies().stream()
                    .filter(copy -> !copy.copy().isErased() && wanted.test(copy))
                    .forEach(copy -> lines.add(line(proof, says(copy), reader, paper)));
        }
    }

    private String says(CopyProof copy) {
        String verdict = words.verdict(copy.verdict());
        String note = copy.note().isEmpty() ? String.join(" ", copy.reasonsInWords()) : copy.note();
        return display.text("report.problem.copy", copy.copy().itemCode(), verdict, note);
    }

    private static void addRemarks(
            List<Line> lines, DayReport report, Predicate<Remark> wanted, Membership reader, boolean paper) {
        for (RollProof proof : report.proofs().rolls()) {
            report.remarks().getOrDefault(proof.roll().id(), Remarks.NONE).remarks().stream()
                    .filter(wanted)
                    .forEach(remark -> lines.add(line(proof, remark.sentence(), reader, paper)));
        }
    }

    private static Line line(RollProof proof, String text, Membership reader, boolean paper) {
        return new Line(
                proof.roll().code(),
                DayViews.href(reader, "rolls/" + proof.roll().id(), paper),
                text);
    }
}
