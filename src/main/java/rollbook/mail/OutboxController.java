package rollbook.mail;

import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.web.Notice;

/** One mail of a production, for who must see that it arrives. */
@Controller
class OutboxController {
    private final Outbox outbox;

    OutboxController(Outbox outbox) {
        this.outbox = outbox;
    }

    @AllowedFor({})
    @GetMapping("/p/{production}/outbox/{id}")
    ModelAndView message(Membership membership, @PathVariable UUID id) {
        return new ModelAndView("mail/message")
                .addObject("place", "mail")
                .addObject("message", outbox.get(membership.productionId(), id))
                .addObject("zone", membership.zone())
                .addObject("acts", membership.path("outbox/" + id))
                .addObject("back", membership.path("outbox"));
    }

    @AllowedFor({})
    @PostMapping("/p/{production}/outbox/{id}/again")
    String sendAgain(
            Membership membership, @PathVariable UUID id, @RequestParam int attempts, RedirectAttributes flash) {
        Message message = outbox.get(membership.productionId(), id);
        outbox.sendAgain(message, Outbox.act(membership, "mail.sent-again", message), attempts);
        flash.addFlashAttribute("notice", Notice.of("mail.message.goes-again"));
        return "redirect:" + membership.path("outbox/" + id);
    }

    @AllowedFor({})
    @PostMapping("/p/{production}/outbox/{id}/withdrawal")
    String withdraw(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        Message message = outbox.get(membership.productionId(), id);
        outbox.withdraw(message, Outbox.act(membership, "mail.withdrawn", message));
        flash.addFlashAttribute("notice", Notice.of("mail.message.withdrawn"));
        return "redirect:" + membership.path("outbox/" + id);
    }
}
