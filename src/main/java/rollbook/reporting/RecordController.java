package rollbook.reporting;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import rollbook.audit.AuditTrail;
import rollbook.audit.RecordedAct;
import rollbook.production.Membership;
import rollbook.web.Paged;

/** The record of who did what. */
@Controller
class RecordController {
    private final AuditTrail trail;

    RecordController(AuditTrail trail) {
        this.trail = trail;
    }

    @GetMapping("/p/{production}/record")
    String record(
            Membership membership,
            @RequestParam(name = "text", defaultValue = "") String text,
            @RequestParam(name = "page", defaultValue = "1") int page,
            Model model) {
        int number = Math.max(1, page);
        model.addAttribute("text", text.strip());
        model.addAttribute(
                "acts",
                new Paged<RecordedAct>(
                        trail.list(membership.productionId(), text, Paged.offset(number, Paged.SIZE), Paged.SIZE),
                        number,
                        Paged.SIZE,
                        trail.count(membership.productionId(), text)));
        return "reporting/record";
    }
}
