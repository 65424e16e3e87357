package rollbook.report;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import rollbook.production.Membership;
import rollbook.schedule.ShootingDay;
import rollbook.web.FileAnswer;
import rollbook.web.NotFoundException;

/** Everything about a show, for whoever takes it over at its wrap. */
@Controller
class HandoverController {
    private final Handovers handovers;
    private final HandoverViews views;
    private final ReportPaper paper;

    HandoverController(Handovers handovers, HandoverViews views, ReportPaper paper) {
        this.handovers = handovers;
        this.views = views;
        this.paper = paper;
    }

    /** @param dayId the day whose rolls are listed; the last with rolls if none is named */
    @GetMapping("/p/{production}/handover")
    String show(
            Membership membership, @RequestParam(name = "day", required = false) @Nullable UUID dayId, Model model) {
        Handover handover = handovers.of(membership);
        ShootingDay shown = shown(handover, dayId);
        model.addAttribute("view", views.onScreen(handover, membership, shown));
        model.addAttribute("shown", shown == null ? null : shown.id());
        model.addAttribute("place", "record");
        return "report/handover";
    }

    private static @Nullable ShootingDay shown(Handover handover, @Nullable UUID dayId) {
        List<ShootingDay> days =
                handover.days().stream().map(ReportRows.PlannedDay::day).toList();
        if (dayId != null) {
            return days.stream()
                    .filter(day -> day.id().equals(dayId))
                    .findFirst()
                    .orElseThrow(NotFoundException::new);
        }
        var shot = handover.rollsByDay().keySet();
        return days.stream()
                .filter(day -> shot.contains(day.id()))
                .reduce((earlier, later) -> later)
                .orElse(days.isEmpty() ? null : days.get(0));
    }

    @GetMapping("/p/{production}/handover.pdf")
    ResponseEntity<byte[]> print(Membership membership) {
        return paper.print(
                "report/handover-paper",
                views.onPaper(handovers.of(membership), membership),
                membership.code() + "-handover.pdf");
    }

    /** Written as it goes out, line by line: it may be long. */
    @GetMapping("/p/{production}/handover.csv")
    void facts(Membership membership, HttpServletResponse response) throws IOException {
        FactSheet sheet = handovers.of(membership).sheet();
        response.setContentType(FileAnswer.CSV.toString());
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                ContentDisposition.inline()
                        .filename(membership.code() + "-handover.csv")
                        .build()
                        .toString());
        sheet.write(response.getOutputStream());
    }
}
