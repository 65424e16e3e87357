package rollbook.mail;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;
import rollbook.people.SignedInPerson;
import rollbook.production.Zones;
import rollbook.web.Display;
import rollbook.web.Paged;

/** A person's own mail: where it goes, when, what of, and what went. */
@Component
class AccountMailPage {
    private static final int ROWS = 20;

    private final Recipients recipients;
    private final Subscriptions subscriptions;
    private final Outbox outbox;
    private final MailSettings settings;
    private final Display display;

    AccountMailPage(
            Recipients recipients, Subscriptions subscriptions, Outbox outbox, MailSettings settings, Display display) {
        this.recipients = recipients;
        this.subscriptions = subscriptions;
        this.outbox = outbox;
        this.settings = settings;
        this.display = display;
    }

    /**
     * @param address as it was typed, null to show what is kept
     * @param quiet as it was typed, null to show what is kept
     */
    ModelAndView page(
            SignedInPerson person,
            int page,
            @Nullable AddressForm address,
            @Nullable QuietForm quiet,
            HttpStatus status) {
        Optional<Recipient> recipient = recipients.of(person.id());
        List<Subscriptions.Own> productions = subscriptions.all(person.id());
        ZoneId zone = recipient.map(Recipient::zone).orElseGet(() -> zone(productions));
        int number = Math.max(1, page);
        return new ModelAndView("mail/account", status)
                .addObject("sentence", sentence(recipient))
                .addObject("recipient", recipient.orElse(null))
                .addObject("addressForm", address == null ? addressForm(recipient) : address)
                .addObject("quietForm", quiet == null ? quietForm(recipient, zone) : quiet)
                .addObject("zones", Zones.choices())
                .addObject("zone", zone)
                .addObject("productions", productions)
                .addObject("haveServer", settings.haveServer())
                .addObject(
                        "messages",
                        new Paged<>(
                                outbox.ofPerson(person.id(), Paged.offset(number, ROWS), ROWS),
                                number,
                                ROWS,
                                outbox.countOfPerson(person.id())));
    }

    /** Where the person is, as long as they haven't said. */
    ZoneId zone(SignedInPerson person) {
        return recipients.of(person.id()).map(Recipient::zone).orElseGet(() -> zone(subscriptions.all(person.id())));
    }

    private static ZoneId zone(List<Subscriptions.Own> productions) {
        return productions.isEmpty()
                ? ZoneId.of(Zones.guess())
                : productions.get(0).zone();
    }

    private String sentence(Optional<Recipient> recipient) {
        String address = recipient.map(Recipient::address).orElse(null);
        String wanted = recipient.map(Recipient::wantedAddress).orElse(null);
        if (address == null) {
            return wanted == null ? display.text("mail.sentence.none") : display.text("mail.sentence.asked", wanted);
        }
        return wanted == null
                ? display.text("mail.sentence", address)
                : display.text("mail.sentence.changing", address, wanted);
    }

    private static AddressForm addressForm(Optional<Recipient> recipient) {
        String wanted = recipient.map(Recipient::wantedAddress).orElse(null);
        String address = recipient.map(Recipient::address).orElse(null);
        return new AddressForm(
                wanted == null ? address : wanted,
                recipient.map(Recipient::version).orElse(0));
    }

    private static QuietForm quietForm(Optional<Recipient> recipient, ZoneId zone) {
        return recipient
                .map(known -> new QuietForm(
                        known.zone().getId(), known.quietFrom(), known.quietUntil(), known.wakes(), known.version()))
                .orElseGet(() -> new QuietForm(zone.getId(), null, null, false, 0));
    }
}
