package rollbook.mail;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.Valid;
import java.time.ZoneId;
import java.util.Objects;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.people.SignedInPerson;
import rollbook.production.Zones;
import rollbook.web.Notice;
import rollbook.web.PortalAddress;
import rollbook.web.Secret;

/** A person's own mail. */
@Controller
class AccountMailController {
    private static final String HOME = "redirect:/account/mail";

    private final AccountMailPage page;
    private final Recipients recipients;
    private final Outbox outbox;
    private final PortalAddress portal;

    AccountMailController(AccountMailPage page, Recipients recipients, Outbox outbox, PortalAddress portal) {
        this.page = page;
        this.recipients = recipients;
        this.outbox = outbox;
        this.portal = portal;
    }

    @GetMapping("/account/mail")
    ModelAndView mail(
            @AuthenticationPrincipal SignedInPerson person,
            @RequestParam(name = "page", defaultValue = "1") int number) {
        return page.page(person, number, null, null, HttpStatus.OK);
    }

    @PostMapping("/account/mail/address")
    ModelAndView want(
            @AuthenticationPrincipal SignedInPerson person,
            @Valid AddressForm form,
            BindingResult result,
            HttpServletRequest request,
            RedirectAttributes flash) {
        if (result.hasErrors()) {
            return wrong(page.page(person, 1, form, null, HttpStatus.UNPROCESSABLE_CONTENT), result);
        }
        recipients.want(person, form.address(), portal.base(request), page.zone(person), form.version());
        flash.addFlashAttribute("notice", Notice.of("mail.address.asked", form.address()));
        return new ModelAndView(HOME);
    }

    @PostMapping("/account/mail/address/removal")
    String forget(@AuthenticationPrincipal SignedInPerson person, @RequestParam int version, RedirectAttributes flash) {
        recipients.forget(person, version);
        flash.addFlashAttribute("notice", Notice.of("mail.address.forgotten"));
        return HOME;
    }

    @PostMapping("/account/mail/quiet-hours")
    ModelAndView keepQuiet(
            @AuthenticationPrincipal SignedInPerson person,
            @Valid QuietForm form,
            BindingResult result,
            HttpServletRequest request,
            RedirectAttributes flash) {
        // What can't be read at all says so by itself.
        if (result.getTarget() != null) {
            check(form, result);
        }
        if (result.hasErrors()) {
            return wrong(page.page(person, 1, null, form, HttpStatus.UNPROCESSABLE_CONTENT), result);
        }
        recipients.keepQuiet(
                person,
                portal.base(request),
                ZoneId.of(form.zone()),
                form.from(),
                form.until(),
                form.wakes(),
                form.version());
        flash.addFlashAttribute("notice", Notice.of("mail.quiet.saved"));
        return new ModelAndView(HOME);
    }

    private static void check(QuietForm form, BindingResult result) {
        Zones.check(form.zone(), result);
        if ((form.from() == null) != (form.until() == null)) {
            result.rejectValue(form.from() == null ? "from" : "until", "mail.quiet.both");
        } else if (form.from() != null && form.from().equals(form.until())) {
            result.rejectValue("until", "mail.quiet.same");
        }
    }

    private static ModelAndView wrong(ModelAndView page, BindingResult result) {
        page.getModel().remove(result.getObjectName());
        page.addAllObjects(Objects.requireNonNull(result.getModel()));
        return page;
    }

    /** Changes nothing yet: programs that look at mail follow its links. */
    @GetMapping("/account/mail/confirmation")
    ModelAndView confirmation(@AuthenticationPrincipal SignedInPerson person, @RequestParam String code) {
        return new ModelAndView("mail/confirmation")
                .addObject("code", code)
                .addObject(
                        "address",
                        recipients.wantedBy(person.id(), Secret.of(code)).orElse(null));
    }

    @PostMapping("/account/mail/confirmation")
    String confirm(
            @AuthenticationPrincipal SignedInPerson person, @RequestParam String code, RedirectAttributes flash) {
        recipients.confirm(person, Secret.of(code));
        flash.addFlashAttribute("notice", Notice.of("mail.address.confirmed"));
        return HOME;
    }

    @GetMapping("/account/mail/messages/{id}")
    ModelAndView message(@AuthenticationPrincipal SignedInPerson person, @PathVariable UUID id) {
        return new ModelAndView("mail/message")
                .addObject("message", outbox.own(person.id(), id))
                .addObject("zone", page.zone(person))
                .addObject("acts", "/account/mail/messages/" + id)
                .addObject("back", "/account/mail");
    }

    @PostMapping("/account/mail/messages/{id}/again")
    String sendAgain(
            @AuthenticationPrincipal SignedInPerson person,
            @PathVariable UUID id,
            @RequestParam int attempts,
            RedirectAttributes flash) {
        Message message = outbox.own(person.id(), id);
        outbox.sendAgain(message, Outbox.act(person, "mail.sent-again", message), attempts);
        flash.addFlashAttribute("notice", Notice.of("mail.message.goes-again"));
        return HOME + "/messages/" + id;
    }

    @PostMapping("/account/mail/messages/{id}/withdrawal")
    String withdraw(@AuthenticationPrincipal SignedInPerson person, @PathVariable UUID id, RedirectAttributes flash) {
        Message message = outbox.own(person.id(), id);
        outbox.withdraw(message, Outbox.act(person, "mail.withdrawn", message));
        flash.addFlashAttribute("notice", Notice.of("mail.message.withdrawn"));
        return HOME + "/messages/" + id;
    }
}
