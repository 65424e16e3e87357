package rollbook.scenario;

import java.util.List;
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
import rollbook.web.Notice;

/** What is proposed to be ordered, and what became of it. */
@Controller
@RequestMapping("/p/{production}/turnaround/proposals")
class ProposalController {
    private static final int LONGEST_REASON = 200;

    private final OrderProposals proposals;
    private final ScenarioLists lists;

    ProposalController(OrderProposals proposals, ScenarioLists lists) {
        this.proposals = proposals;
        this.lists = lists;
    }

    @ModelAttribute("place")
    String place() {
        return "days";
    }

    @GetMapping
    String list(Membership membership, Model model) {
        lists.describeProposals(proposals.list(membership.productionId()), membership, model);
        return "scenario/proposals";
    }

    @PostMapping("/{id}/take-up")
    @AllowedFor(Role.OFFICE)
    String takeUp(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "-1") int version,
            RedirectAttributes flash) {
        List<UUID> orders = proposals.takeUp(membership, id, version);
        flash.addFlashAttribute("notice", Notice.of("scenario.taken-up", orders.size()));
        return "redirect:" + membership.path(orders.size() == 1 ? "orders/" + orders.get(0) : "orders");
    }

    @PostMapping("/{id}/withdraw")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView withdraw(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "-1") int version,
            @RequestParam(defaultValue = "") String reason,
            Model model,
            RedirectAttributes flash) {
        String why = reason.strip();
        if (why.isEmpty() || why.length() > LONGEST_REASON) {
            lists.describeProposals(proposals.list(membership.productionId()), membership, model);
            model.addAttribute("wrongId", id);
            model.addAttribute("wrongReason", why);
            model.addAttribute("invalid", true);
            return new ModelAndView("scenario/proposals", model.asMap(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        proposals.withdraw(membership, id, version, why);
        flash.addFlashAttribute("notice", Notice.of("scenario.withdrawn"));
        return new ModelAndView("redirect:" + membership.path("turnaround/proposals"));
    }
}
