package rollbook.purchase;

import jakarta.validation.Valid;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.quantity.Money;
import rollbook.web.Notice;

/** Up to which amount whom orders are approved by. */
@Controller
@RequestMapping("/p/{production}/orders/limits")
class LimitsController {
    private final Limits limits;

    LimitsController(Limits limits) {
        this.limits = limits;
    }

    @GetMapping
    @AllowedFor(Role.ADMINISTRATOR)
    String show(Membership membership, Model model) {
        model.addAttribute(
                "limitsForm", LimitsForm.of(limits.of(membership.productionId()), Money.of(membership.currency())));
        return "purchase/limits";
    }

    @PostMapping
    @AllowedFor(Role.ADMINISTRATOR)
    ModelAndView change(
            Membership membership, @Valid LimitsForm limitsForm, BindingResult result, RedirectAttributes flash) {
        Money money = Money.of(membership.currency());
        if (!result.hasErrors()) {
            limitsForm.look(money, result);
        }
        if (result.hasErrors()) {
            return new ModelAndView("purchase/limits", result.getModel(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        limits.change(membership, limitsForm.limits(money));
        flash.addFlashAttribute("notice", Notice.of("purchase.limits.saved"));
        return new ModelAndView("redirect:" + membership.path("orders"));
    }
}
