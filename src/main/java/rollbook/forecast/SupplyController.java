package rollbook.forecast;

import jakarta.validation.Valid;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
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
import rollbook.ordering.PublicHolidays;
import rollbook.production.AllowedFor;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Choice;
import rollbook.web.Notice;

/** The forms that say how more media can be had, how full items may get and how sure the production wants to be. */
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
        LegSupply supply = supplies.find(membership.productionId(), legId)
                .orElseGet(() -> LikelySupply.of(legId, leg.mediaKind(), pool(membership, leg)));
        model.addAttribute("supplyForm", SupplyForm.of(supply, currency(membership)));
        addChoices(model.asMap(), leg);
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
        if (!wrong.hasErrors()) {
            lookFurther(supplyForm, currency, wrong);
        }
        if (wrong.hasErrors()) {
            ModelAndView page = again("forecast/supply", wrong);
            addChoices(page.getModelMap(), leg);
            return page;
        }
        supplies.change(membership, supplyForm.supply(legId, currency));
        flash.addFlashAttribute("notice", Notice.of("forecast.supply.saved", leg.name()));
        return new ModelAndView("redirect:" + membership.path("storage"));
    }

    private static void lookFurther(SupplyForm form, Currency currency, BindingResult wrong) {
        Map<String, @Nullable BigDecimal> prices = new LinkedHashMap<>();
        prices.put("itemPrice", form.itemPrice());
        prices.put("deliveryPrice", form.deliveryPrice());
        prices.put("hireWeekPrice", form.hireWeekPrice());
        prices.forEach((field, price) -> {
            if (SupplyForm.isTooFine(price, currency)) {
                wrong.rejectValue(field, "forecast.supply.price-too-fine");
            }
        });
        if (form.isSlowFasterThanUsual()) {
            wrong.rejectValue("slowLeadTimeWorkingDays", "forecast.supply.slow-lead-time.too-short");
        }
        if (form.isHireHalfSaid()) {
            wrong.rejectValue(
                    form.hireWeekPrice() == null ? "hireWeekPrice" : "hireMinimumWeeks", "forecast.supply.hire.half");
        }
        if (form.country() != null
                && !form.country().isEmpty()
                && !PublicHolidays.countries().contains(form.country())) {
            wrong.rejectValue("country", "forecast.supply.country.unknown");
        }
    }

    private static void addChoices(Map<String, Object> model, Leg leg) {
        model.put("leg", leg);
        model.put(
                "countries",
                PublicHolidays.countries().stream()
                        .map(code -> new Choice(code, new Locale("", code).getDisplayCountry(Locale.UK)))
                        .sorted(Comparator.comparing(Choice::text))
                        .toList());
        model.put("destinations", DeliveredTo.values());
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

    private static Currency currency(Membership membership) {
        return Currency.getInstance(membership.currency());
    }
}
