package rollbook.forecast;

import jakarta.validation.Valid;
import java.util.List;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.supplier.DeliveredTo;
import rollbook.web.Choice;
import rollbook.web.Notice;

/** The forms that say what a pool is filled up with, how full items may get and how sure the production wants to be. */
@Controller
class SupplyController {
    private final Supplies supplies;
    private final CopyPlan plan;
    private final SupplyChoices choices;

    SupplyController(Supplies supplies, CopyPlan plan, SupplyChoices choices) {
        this.supplies = supplies;
        this.plan = plan;
        this.choices = choices;
    }

    @GetMapping("/p/{production}/storage/supply/{legId}")
    @AllowedFor(Role.OFFICE)
    ModelAndView supply(Membership membership, @PathVariable UUID legId) {
        Leg leg = plan.leg(membership.productionId(), legId);
        LegSupply supply = supplies.find(membership.productionId(), legId).orElse(null);
        return page(leg, choices.of(membership, leg, supply), HttpStatus.OK)
                .addObject("supplyForm", supply == null ? SupplyForm.blank() : SupplyForm.of(supply));
    }

    @PostMapping("/p/{production}/storage/supply/{legId}")
    @AllowedFor(Role.OFFICE)
    ModelAndView change(
            Membership membership,
            @PathVariable UUID legId,
            @Valid SupplyForm supplyForm,
            BindingResult wrong,
            RedirectAttributes flash) {
        Leg leg = plan.leg(membership.productionId(), legId);
        List<Choice> offered = choices.of(
                membership, leg, supplies.find(membership.productionId(), legId).orElse(null));
        if (!wrong.hasErrors()
                && offered.stream().noneMatch(choice -> choice.value().equals(String.valueOf(supplyForm.item())))) {
            wrong.rejectValue("item", "forecast.supply.item.unknown");
        }
        if (wrong.hasErrors()) {
            return page(leg, offered, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        supplies.change(membership, supplyForm.supply(legId));
        flash.addFlashAttribute("notice", Notice.of("forecast.supply.saved", leg.name()));
        return new ModelAndView("redirect:" + membership.path("storage"));
    }

    private static ModelAndView page(Leg leg, List<Choice> items, HttpStatus status) {
        return new ModelAndView("forecast/supply", status)
                .addObject("leg", leg)
                .addObject("items", items)
                .addObject("destinations", DeliveredTo.values());
    }

    @GetMapping("/p/{production}/storage/assumptions")
    @AllowedFor(Role.OFFICE)
    String assumptions(Membership membership, Model model) {
        model.addAttribute("assumptionsForm", AssumptionsForm.of(supplies.assumptions(membership.productionId())));
        return "forecast/assumptions";
    }

    @PostMapping("/p/{production}/storage/assumptions")
    @AllowedFor(Role.OFFICE)
    ModelAndView changeAssumptions(
            Membership membership,
            @Valid AssumptionsForm assumptionsForm,
            BindingResult wrong,
            RedirectAttributes flash) {
        if (wrong.hasErrors()) {
            return again("forecast/assumptions", wrong);
        }
        supplies.changeAssumptions(membership, assumptionsForm.assumptions());
        flash.addFlashAttribute(
                "notice",
                Notice.of(
                        "forecast.assumptions.saved",
                        assumptionsForm.fillPercent(),
                        assumptionsForm.serviceLevelPercent()));
        return new ModelAndView("redirect:" + membership.path("storage"));
    }

    private static ModelAndView again(String view, BindingResult wrong) {
        ModelAndView page = new ModelAndView(view, wrong.getModel());
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }
}
