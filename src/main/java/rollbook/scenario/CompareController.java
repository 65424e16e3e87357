package rollbook.scenario;

import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.RequestParam;
import rollbook.production.Membership;
import rollbook.web.Display;
import rollbook.web.NotFoundException;

/** Scenarios side by side. */
@Controller
class CompareController {
    private static final int FEWEST = 2;
    private static final int MOST = 4;

    private final Scenarios scenarios;
    private final ScenarioComparison comparison;
    private final ScenarioLists lists;
    private final Display display;

    CompareController(Scenarios scenarios, ScenarioComparison comparison, ScenarioLists lists, Display display) {
        this.scenarios = scenarios;
        this.comparison = comparison;
        this.lists = lists;
        this.display = display;
    }

    @ModelAttribute("place")
    String place() {
        return "days";
    }

    /** With too few or too many named it offers the list again, which says how many. */
    @GetMapping("/p/{production}/turnaround/compare")
    String compare(Membership membership, @RequestParam(name = "with", defaultValue = "") List<UUID> ids, Model model) {
        List<Scenario> all = scenarios.list(membership.productionId());
        List<Scenario> chosen = ids.stream()
                .distinct()
                .map(id -> all.stream()
                        .filter(scenario -> scenario.id().equals(id))
                        .findFirst()
                        .orElseThrow(NotFoundException::new))
                .toList();
        if (chosen.size() < FEWEST || chosen.size() > MOST) {
            lists.describe(all, membership, model);
            model.addAttribute("sentence", display.text("scenario.compare.how-many", FEWEST, MOST));
            return "scenario/list";
        }
        model.addAttribute("chosen", chosen);
        model.addAttribute("table", comparison.of(chosen, membership));
        return "scenario/compare";
    }
}
