package rollbook.forecast;

import jakarta.validation.Valid;
import java.util.Currency;
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
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.AllowedFor;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Notice;

/** The forms that say how more media can be had and how full items may get. */
@Controller
class SupplyController {
    private final Supplies supplies;
    private final CopyPlan plan;
    private final MediaItems items;

    SupplyController(Supplies supplies, CopyPlan plan, MediaItems items) {
        this.supplies = supplies;
        this.plan = plan;
        this.items = items;
    }

    @GetMapping("/p/{production}/storage/supply/{legId}")
    @AllowedFor(Role.OFFICE)
    String supply(Membership membership, @PathVariable UUID legId, Model model) {
        Leg leg = plan.leg(membership.productionId(), legId);
        Currency currency = currency(membership);
        model.addAttribute("leg", leg);
        model.addAttribute(
                "supplyForm",
                supplies.find(membership.productionId(), legId)
                        .map(supply -> SupplyForm.of(supply, currency))
                        .orElseGet(() -> SupplyForm.likely(leg.mediaKind(), pool(membership, leg), currency)));
        return "forecast/supply";
    }

    private List<MediaItem> pool(Membership membership, Leg leg) {
        return items.list(membership.productionId(), leg.mediaKind()).stream()
                .filter(item -> leg.id().equals(item.legId()))
                .toList();
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
        Currency currency = currency(membership);
        if (!wrong.hasErrors() && supplyForm.isTooFineFor(currency)) {
            wrong.rejectValue("itemPrice", "forecast.supply.price-too-fine");
        }
        if (wrong.hasErrors()) {
            return again("forecast/supply", wrong).addObject("leg", leg);
        }
        supplies.change(membership, supplyForm.supply(legId, currency));
        flash.addFlashAttribute("notice", Notice.of("forecast.supply.saved", leg.name()));
        return new ModelAndView("redirect:" + membership.path("storage"));
    }

    @GetMapping("/p/{production}/storage/fill-level")
    @AllowedFor(Role.OFFICE)
    String fillLevel(Membership membership, Model model) {
        Supplies.FillLevel level = supplies.fillLevel(membership.productionId());
        model.addAttribute("fillLevelForm", new FillLevelForm(level.percent(), level.version()));
        return "forecast/fill-level";
    }

    @PostMapping("/p/{production}/storage/fill-level")
    @AllowedFor(Role.OFFICE)
    ModelAndView changeFillLevel(
            Membership membership, @Valid FillLevelForm fillLevelForm, BindingResult wrong, RedirectAttributes flash) {
        if (wrong.hasErrors()) {
            return again("forecast/fill-level", wrong);
        }
        supplies.changeFillLevel(membership, new Supplies.FillLevel(fillLevelForm.percent(), fillLevelForm.version()));
        flash.addFlashAttribute("notice", Notice.of("forecast.fill-level.saved", fillLevelForm.percent()));
        return new ModelAndView("redirect:" + membership.path("storage"));
    }

    private static ModelAndView again(String view, BindingResult wrong) {
        ModelAndView page = new ModelAndView(view, wrong.getModel());
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page;
    }

    private static Currency currency(Membership membership) {
        return Currency.getInstance(membership.currency());
    }
}
