package rollbook.verification;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Notice;

/** A roll's page, the clearing of its card and the record of the card's erasure. */
@Controller
class RollController {
    private final RollPage page;
    private final Clearances clearances;

    RollController(RollPage page, Clearances clearances) {
        this.page = page;
        this.clearances = clearances;
    }

    /** @param code the card's code as typed, to show that this card is meant */
    record CardForm(@NotBlank String code) {}

    @GetMapping("/p/{production}/rolls/{roll}")
    String roll(Membership membership, @PathVariable UUID roll, Model model) {
        model.addAttribute("view", page.view(membership, roll));
        return "verification/roll";
    }

    @GetMapping("/p/{production}/rolls/{roll}/clear")
    String askToClear(Membership membership, @PathVariable UUID roll, Model model) {
        model.addAttribute("cardForm", new CardForm(""));
        model.addAttribute("view", page.brief(membership, roll));
        return "verification/clear";
    }

    @PostMapping("/p/{production}/rolls/{roll}/clear")
    @AllowedFor(Role.WRANGLER)
    ModelAndView clear(
            Membership membership,
            @PathVariable UUID roll,
            @Valid @ModelAttribute CardForm form,
            BindingResult errors,
            RedirectAttributes flash) {
        return confirmed(
                "clear",
                "verification.cleared",
                membership,
                roll,
                form,
                errors,
                flash,
                () -> clearances.clear(membership, roll, form.code()));
    }

    @GetMapping("/p/{production}/rolls/{roll}/erase")
    String askToErase(Membership membership, @PathVariable UUID roll, Model model) {
        model.addAttribute("cardForm", new CardForm(""));
        model.addAttribute("view", page.brief(membership, roll));
        return "verification/erase";
    }

    @PostMapping("/p/{production}/rolls/{roll}/erase")
    @AllowedFor(Role.WRANGLER)
    ModelAndView recordErasure(
            Membership membership,
            @PathVariable UUID roll,
            @Valid @ModelAttribute CardForm form,
            BindingResult errors,
            RedirectAttributes flash) {
        return confirmed(
                "erase",
                "verification.erased",
                membership,
                roll,
                form,
                errors,
                flash,
                () -> clearances.recordErasure(membership, roll, form.code()));
    }

    /** Acts on the card if its own code was typed; else shows the form again. */
    private ModelAndView confirmed(
            String template,
            String notice,
            Membership membership,
            UUID roll,
            CardForm form,
            BindingResult errors,
            RedirectAttributes flash,
            Runnable act) {
        RollPage.Brief view = page.brief(membership, roll);
        if (!meansCard(form, errors, view)) {
            return again("verification/" + template, view);
        }
        act.run();
        flash.addFlashAttribute("notice", Notice.of(notice, view.roll().cardCode()));
        return new ModelAndView("redirect:" + membership.path("rolls/" + roll));
    }

    private static boolean meansCard(CardForm form, BindingResult errors, RollPage.Brief view) {
        if (!errors.hasErrors()
                && !view.roll().cardCode().equalsIgnoreCase(form.code().strip())) {
            errors.rejectValue(
                    "code", "verification.other-card", new Object[] {view.roll().cardCode()}, null);
        }
        return !errors.hasErrors();
    }

    private static ModelAndView again(String template, RollPage.Brief view) {
        ModelAndView form = new ModelAndView(template);
        form.addObject("view", view);
        form.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return form;
    }
}
