package rollbook.report;

import java.util.Optional;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import rollbook.forecast.StorageStatuses;
import rollbook.production.Membership;
import rollbook.verification.ProofSummaries;
import rollbook.web.Display;
import rollbook.web.NotFoundException;

/** How storage stands, on one page, for the producer. */
@Controller
class StatusController {
    private final StorageStatuses statuses;
    private final ProofSummaries proofs;
    private final StatusViews views;
    private final ReportPaper paper;
    private final Display display;

    StatusController(
            StorageStatuses statuses, ProofSummaries proofs, StatusViews views, ReportPaper paper, Display display) {
        this.statuses = statuses;
        this.proofs = proofs;
        this.views = views;
        this.paper = paper;
        this.display = display;
    }

    @GetMapping("/p/{production}/storage/status")
    String show(Membership membership, Model model) {
        Optional<StatusView> view = view(membership, false);
        model.addAttribute("view", view.orElse(null));
        model.addAttribute(
                "sentence", view.map(StatusView::sentence).orElseGet(() -> display.text("report.status.nothing")));
        return "report/status";
    }

    @GetMapping("/p/{production}/storage/status.pdf")
    ResponseEntity<byte[]> print(Membership membership) {
        StatusView view = view(membership, true).orElseThrow(NotFoundException::new);
        return paper.print("report/status-paper", view, membership.code() + "-storage.pdf");
    }

    private Optional<StatusView> view(Membership membership, boolean onPaper) {
        return statuses.latest(membership.productionId())
                .map(status -> views.of(status, proofs.of(membership.productionId()), membership, onPaper));
    }
}
