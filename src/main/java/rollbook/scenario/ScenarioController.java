package rollbook.scenario;

import java.util.Map;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.quantity.Money;
import rollbook.web.Notice;
import rollbook.web.Refusal;

/** The scenarios that were saved. */
@Controller
@RequestMapping("/p/{production}/turnaround/scenarios")
class ScenarioController {
    private final Scenarios scenarios;
    private final OrderProposals proposals;
    private final TurnaroundPages pages;
    private final ScenarioLists lists;

    ScenarioController(Scenarios scenarios, OrderProposals proposals, TurnaroundPages pages, ScenarioLists lists) {
        this.scenarios = scenarios;
        this.proposals = proposals;
        this.pages = pages;
        this.lists = lists;
    }

    @ModelAttribute("place")
    String place() {
        return "days";
    }

    @GetMapping
    String list(Membership membership, Model model) {
        lists.describe(scenarios.list(membership.productionId()), membership, model);
        return "scenario/list";
    }

    @GetMapping("/{id}")
    ModelAndView show(Membership membership, @PathVariable UUID id, @RequestParam Map<String, String> typed) {
        Scenario scenario = scenarios.get(membership.productionId(), id);
        return pages.kept(scenario, sheet(scenario, typed, membership), membership);
    }

    @PostMapping("/{id}")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView change(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(name = "scenario", defaultValue = "") String typedName,
            @RequestParam(defaultValue = "-1") int version,
            @RequestParam Map<String, String> typed,
            RedirectAttributes flash) {
        Scenario scenario = scenarios.get(membership.productionId(), id);
        Sheet sheet = sheet(scenario, typed, membership);
        ScenarioName name = ScenarioName.of(typedName);
        if (!sheet.isRight() || !name.isRight()) {
            return wrong(scenario, sheet, name, membership);
        }
        try {
            scenarios.change(membership, id, name.text(), ScenarioDrafts.inputs(sheet), version);
        } catch (Refusal taken) {
            if (!taken.key().equals(Scenarios.NAME_TAKEN)) {
                throw taken;
            }
            return wrong(scenario, sheet, name.taken(), membership);
        }
        flash.addFlashAttribute("notice", Notice.of("scenario.saved", name.text()));
        return to(membership, "turnaround/scenarios/" + id);
    }

    private ModelAndView wrong(Scenario scenario, Sheet sheet, ScenarioName name, Membership membership) {
        ModelAndView page = pages.kept(scenario, sheet, membership);
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page.addObject("invalid", true).addObject("name", name);
    }

    @PostMapping("/{id}/copy")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView copy(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        UUID copy = scenarios.copy(membership, id);
        String name = scenarios.get(membership.productionId(), copy).name();
        flash.addFlashAttribute("notice", Notice.of("scenario.copied", name));
        return to(membership, "turnaround/scenarios/" + copy);
    }

    @PostMapping("/{id}/archive")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView archive(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "-1") int version,
            RedirectAttributes flash) {
        String name = scenarios.archive(membership, id, version);
        flash.addFlashAttribute("notice", Notice.of("scenario.archived", name));
        return to(membership, "turnaround/scenarios");
    }

    @PostMapping("/{id}/restore")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView restore(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "-1") int version,
            RedirectAttributes flash) {
        String name = scenarios.restore(membership, id, version);
        flash.addFlashAttribute("notice", Notice.of("scenario.restored", name));
        return to(membership, "turnaround/scenarios/" + id);
    }

    @PostMapping("/{id}/proposal")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView propose(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        proposals.propose(membership, id);
        String name = scenarios.get(membership.productionId(), id).name();
        flash.addFlashAttribute("notice", Notice.of("scenario.proposed", name));
        return to(membership, "turnaround/proposals");
    }

    private static ModelAndView to(Membership membership, String page) {
        return new ModelAndView("redirect:" + membership.path(page));
    }

    private static Sheet sheet(Scenario scenario, Map<String, String> typed, Membership membership) {
        ScenarioInputs inputs = scenario.inputs();
        return Sheet.of(
                inputs.facts(),
                Beginning.kept(inputs.values(), scenario.name()),
                typed,
                Money.of(membership.currency()));
    }
}
