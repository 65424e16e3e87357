package rollbook.report;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.UUID;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import rollbook.production.Membership;
import rollbook.schedule.ShootingDay;

/** The report of a unit's shooting day: to read, to print, to compute with. */
@Controller
@RequestMapping("/p/{production}/days/{day}")
class DayReportController {
    private final DayReports reports;
    private final SignOffs signOffs;
    private final DayViews views;
    private final ReportPaper paper;

    DayReportController(DayReports reports, SignOffs signOffs, DayViews views, ReportPaper paper) {
        this.reports = reports;
        this.signOffs = signOffs;
        this.views = views;
        this.paper = paper;
    }

    @GetMapping("/report")
    String show(Membership membership, @PathVariable("day") UUID dayId, Model model) {
        DayView view = view(membership, dayId, reports.of(membership.productionId(), dayId), false);
        model.addAttribute("view", view);
        model.addAttribute("signForm", new SignForm("", view.sha256()));
        return "report/day";
    }

    @GetMapping("/report.pdf")
    ResponseEntity<byte[]> print(Membership membership, @PathVariable("day") UUID dayId) {
        DayReport report = reports.of(membership.productionId(), dayId);
        return paper.print(
                "report/day-paper", view(membership, dayId, report, true), fileName(membership, report.day()) + ".pdf");
    }

    /** The facts, without the signatures below them. */
    @GetMapping("/report.csv")
    ResponseEntity<byte[]> facts(Membership membership, @PathVariable("day") UUID dayId) {
        DayReport report = reports.of(membership.productionId(), dayId);
        return ReportPaper.csv(report.sheet().bytes(), fileName(membership, report.day()) + ".csv");
    }

    /** The facts as somebody signed them, to the byte. */
    @GetMapping("/report/sign-offs/{signOff}/facts.csv")
    ResponseEntity<byte[]> signedFacts(
            Membership membership, @PathVariable("day") UUID dayId, @PathVariable("signOff") UUID signOffId) {
        SignOff signOff = signOffs.get(membership.productionId(), dayId, signOffId);
        return ReportPaper.csv(
                signOff.content().getBytes(StandardCharsets.UTF_8),
                "%s-signed-%s.csv".formatted(membership.code(), signOff.sha256().substring(0, 12)));
    }

    private DayView view(Membership membership, UUID dayId, DayReport report, boolean onPaper) {
        return views.of(report, signOffs.ofDay(membership.productionId(), dayId), membership, onPaper);
    }

    private static String fileName(Membership membership, ShootingDay day) {
        String unit = day.unitName().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
        return "%s-%s-day-%02d".formatted(membership.code(), unit, day.number());
    }
}
