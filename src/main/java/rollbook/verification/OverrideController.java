package rollbook.verification;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
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
import rollbook.verification.RollPage.Brief;
import rollbook.web.Display;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** Asking to clear a card without proof, and what a second person does about it. */
@Controller
class OverrideController {
    private final Overrides overrides;
    private final RollPage page;
    private final Display display;

    OverrideController(Overrides overrides, RollPage page, Display display) {
        this.overrides = overrides;
        this.page = page;
        this.display = display;
    }

    record ReasonForm(
            @NotBlank @Size(min = Overrides.SHORTEST_REASON, max = Overrides.LONGEST_REASON)
            String reason) {
        ReasonForm {
            reason = Typed.text(reason);
        }
    }

    /** @param code the card's code as typed, to show that this card is meant */
    record ApprovalForm(@NotBlank String code) {}

    record WithdrawalForm(
            @NotBlank @Size(max = Overrides.LONGEST_REASON) String why) {}

    @GetMapping("/p/{production}/rolls/{roll}/override")
    ModelAndView ask(Membership membership, @PathVariable UUID roll) {
        return asking(page.brief(membership, roll), HttpStatus.OK).addObject("reasonForm", new ReasonForm(""));
    }

    @PostMapping("/p/{production}/rolls/{roll}/override")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView request(
            Membership membership,
            @PathVariable UUID roll,
            @Valid @ModelAttribute ReasonForm form,
            BindingResult errors,
            RedirectAttributes flash) {
        if (errors.hasErrors()) {
            return asking(page.brief(membership, roll), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        UUID request = overrides.request(membership, roll, form.reason());
        flash.addFlashAttribute("notice", Notice.of("verification.override.requested"));
        return new ModelAndView("redirect:" + membership.path("overrides/" + request));
    }

    @GetMapping("/p/{production}/overrides/{request}")
    ModelAndView look(Membership membership, @PathVariable UUID request) {
        return looking(membership, request, HttpStatus.OK)
                .addObject("approvalForm", new ApprovalForm(""))
                .addObject("withdrawalForm", new WithdrawalForm(""));
    }

    @PostMapping("/p/{production}/overrides/{request}/approve")
    @AllowedFor(Role.POST)
    ModelAndView approve(
            Membership membership,
            @PathVariable UUID request,
            @Valid @ModelAttribute ApprovalForm form,
            BindingResult errors,
            RedirectAttributes flash) {
        WithoutProof asked = overrides.get(membership.productionId(), request);
        if (!errors.hasErrors()
                && !asked.cardCode().equalsIgnoreCase(form.code().strip())) {
            errors.rejectValue("code", "verification.other-card", new Object[] {asked.cardCode()}, null);
        }
        if (errors.hasErrors()) {
            return looking(membership, request, HttpStatus.UNPROCESSABLE_CONTENT)
                    .addObject("withdrawalForm", new WithdrawalForm(""));
        }
        overrides.approve(membership, request, form.code());
        flash.addFlashAttribute("notice", Notice.of("verification.override.approved", asked.cardCode()));
        return new ModelAndView("redirect:" + membership.path("rolls/" + asked.rollId()));
    }

    @PostMapping("/p/{production}/overrides/{request}/withdraw")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView withdraw(
            Membership membership,
            @PathVariable UUID request,
            @Valid @ModelAttribute WithdrawalForm form,
            BindingResult errors,
            RedirectAttributes flash) {
        WithoutProof asked = overrides.get(membership.productionId(), request);
        if (errors.hasErrors()) {
            return looking(membership, request, HttpStatus.UNPROCESSABLE_CONTENT)
                    .addObject("approvalForm", new ApprovalForm(""));
        }
        overrides.withdraw(membership, request, form.why());
        flash.addFlashAttribute("notice", Notice.of("verification.override.withdrawn", asked.cardCode()));
        return new ModelAndView("redirect:" + membership.path("rolls/" + asked.rollId()));
    }

    private ModelAndView asking(Brief view, HttpStatus status) {
        return new ModelAndView("verification/override-ask", status).addObject("view", view);
    }

    private ModelAndView looking(Membership membership, UUID request, HttpStatus status) {
        WithoutProof asked = overrides.get(membership.productionId(), request);
        boolean waits = overrides.waits(asked);
        boolean own = asked.requestedBy().equals(membership.personId());
        return new ModelAndView("verification/override", status)
                .addObject("asked", asked)
                .addObject("view", page.brief(membership, asked.rollId()))
                .addObject("sentence", sentence(asked, waits))
                .addObject("waits", waits)
                .addObject("own", own)
                .addObject("mayApprove", waits && !own && membership.may(Role.POST))
                .addObject("mayWithdraw", mayWithdraw(membership, asked, waits));
    }

    private static boolean mayWithdraw(Membership membership, WithoutProof asked, boolean waits) {
        return asked.withdrawnAt() == null
                && (waits || asked.isApproved())
                && membership.may(Role.WRANGLER, Role.OFFICE, Role.POST);
    }

    private String sentence(WithoutProof asked, boolean waits) {
        if (asked.withdrawnAt() != null) {
            return display.text("verification.override.sentence.withdrawn", asked.cardCode(), asked.withdrawnByName());
        }
        if (asked.isApproved()) {
            return display.text(
                    "verification.override.sentence.approved",
                    asked.cardCode(),
                    asked.requestedByName(),
                    asked.approvedByName());
        }
        return display.text(
                waits ? "verification.override.sentence.waits" : "verification.override.sentence.too-late",
                asked.requestedByName(),
                asked.cardCode());
    }
}
