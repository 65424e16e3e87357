package rollbook.mail;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.Notice;

/** What a member is told of a production by mail. Everybody chooses for themselves. */
@Controller
class SubscriptionController {
    private final Subscriptions subscriptions;
    private final Recipients recipients;
    private final MailSettings settings;
    private final Display display;

    SubscriptionController(Subscriptions subscriptions, Recipients recipients, MailSettings settings, Display display) {
        this.subscriptions = subscriptions;
        this.recipients = recipients;
        this.settings = settings;
        this.display = display;
    }

    @GetMapping("/p/{production}/mail")
    ModelAndView mail(Membership membership) {
        Subscription subscription = subscriptions.of(membership);
        String address =
                recipients.of(membership.personId()).map(Recipient::address).orElse(null);
        return new ModelAndView("mail/subscription")
                .addObject("subscriptionForm", SubscriptionForm.of(subscription))
                .addObject("address", address)
                .addObject("haveServer", settings.haveServer())
                .addObject("sentence", sentence(subscription, address == null));
    }

    private String sentence(Subscription subscription, boolean nowhere) {
        String kinds = Stream.of(Kind.DIGEST, Kind.ALARM, Kind.WEEKLY)
                .filter(subscription::wants)
                .map(kind -> display.text("mail.gets." + kind))
                .collect(Collectors.joining(", "));
        if (kinds.isEmpty()) {
            return display.text(subscription.muted() ? "mail.gets.muted" : "mail.gets.nothing");
        }
        return display.text(nowhere ? "mail.gets.nowhere" : "mail.gets", kinds);
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST, Role.READER})
    @PostMapping("/p/{production}/mail")
    String choose(Membership membership, SubscriptionForm form, RedirectAttributes flash) {
        subscriptions.choose(membership, form.subscription());
        flash.addFlashAttribute("notice", Notice.of("mail.chosen"));
        return "redirect:" + membership.path("mail");
    }
}
