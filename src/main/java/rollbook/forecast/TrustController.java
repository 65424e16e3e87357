package rollbook.forecast;

import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import rollbook.production.Membership;

/** How far may the forecast be trusted? */
@Controller
class TrustController {
    private final ForecastRuns runs;
    private final TrustWords words;

    TrustController(ForecastRuns runs, TrustWords words) {
        this.runs = runs;
        this.words = words;
    }

    @GetMapping("/p/{production}/storage/trust")
    String show(Membership membership, Model model) {
        ForecastRun newest = runs.standing(membership.productionId()).newest();
        TrackRecord record = newest == null
                ? new TrackRecord(List.of())
                : TrackRecord.of(
                        runs.firstOfEachDate(membership.productionId()),
                        newest.inputs().days());
        model.addAttribute("sentence", words.sentence(record));
        model.addAttribute("rows", words.rows(record));
        return "forecast/trust";
    }
}
