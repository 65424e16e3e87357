package rollbook.mail;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Listing;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;

/** A production's mail, for who must see that it arrives; several are sent again at once, after a look at which. */
@Controller
@RequestMapping("/p/{production}/outbox")
class OutboxListController {
    private static final Pattern SEEN =
            Pattern.compile("([0-9a-fA-F]{8}(?:-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}):(\\d{1,9})");
    private static final Listing.Order<OutboxList.Column> NEWEST_FIRST =
            new Listing.Order<>(OutboxList.Column.WRITTEN, true);

    private final Outbox outbox;
    private final OutboxList list;
    private final MailSettings settings;
    private final Display display;

    OutboxListController(Outbox outbox, OutboxList list, MailSettings settings, Display display) {
        this.outbox = outbox;
        this.list = list;
        this.settings = settings;
        this.display = display;
    }

    @AllowedFor({})
    @GetMapping
    ModelAndView outbox(Membership membership, @RequestParam Map<String, String> address) {
        OutboxList.Counts counts = list.counts(membership.productionId());
        Listing listing = Listing.of(membership.path("outbox"), address);
        OutboxList.Wanted wanted = wanted(listing, counts);
        return new ModelAndView("mail/outbox")
                .addObject("place", "mail")
                .addObject("counts", counts)
                .addObject("list", listing)
                .addObject("haveServer", settings.haveServer())
                .addObject(
                        "sentence",
                        counts.all() == 0
                                ? display.text("mail.outbox.none")
                                : display.text(
                                        "mail.outbox.sentence", counts.all(), counts.waiting(), counts.trouble()))
                .addObject("messages", list.page(membership.productionId(), wanted, listing.page()));
    }

    private OutboxList.Wanted wanted(Listing listing, OutboxList.Counts counts) {
        String state = listing.choose(
                "state",
                display.text("mail.list.state"),
                display.text("mail.outbox.any-state"),
                Stream.concat(
                                Stream.of(new Choice(
                                        OutboxList.TROUBLE, display.text("mail.outbox.trouble", counts.trouble()))),
                                Stream.of(State.values())
                                        .map(one -> new Choice(one.name(), display.text("mail.state." + one))))
                        .toList());
        String kind = listing.choose(
                "kind",
                display.text("mail.message.kind"),
                display.text("mail.outbox.any-kind"),
                Stream.of(Kind.values())
                        .filter(one -> one != Kind.CONFIRMATION)
                        .map(one -> new Choice(one.name(), display.text("mail.kind." + one)))
                        .toList());
        String text = listing.text("q", display.text("mail.outbox.text"));
        return new OutboxList.Wanted(
                state,
                kind,
                text,
                listing.order(
                        OutboxList.Column.values(),
                        NEWEST_FIRST,
                        column -> display.text("mail.outbox.column." + column.name())));
    }

    /** @param seen the messages that are ticked, each with how often it had been tried */
    @AllowedFor({})
    @GetMapping("/again")
    ModelAndView askToSendAgain(
            Membership membership, @RequestParam(name = "seen", defaultValue = "") List<String> seen) {
        return look(membership, read(seen), HttpStatus.OK);
    }

    @AllowedFor({})
    @PostMapping("/again")
    ModelAndView sendAgain(
            Membership membership,
            @RequestParam(name = "seen", defaultValue = "") List<String> seen,
            RedirectAttributes flash) {
        Map<UUID, Integer> each = read(seen);
        if (each.isEmpty()) {
            return look(membership, each, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        outbox.sendAgainAll(membership, each);
        flash.addFlashAttribute("notice", Notice.of("mail.outbox.go-again", each.size()));
        return new ModelAndView("redirect:" + membership.path("outbox"));
    }

    private ModelAndView look(Membership membership, Map<UUID, Integer> seen, HttpStatus status) {
        List<Message> messages = list.ofIds(membership.productionId(), seen.keySet());
        return new ModelAndView("mail/again", status)
                .addObject("place", "mail")
                .addObject("will", messages.stream().filter(Message::mayGoAgain).toList())
                .addObject(
                        "kept",
                        messages.stream()
                                .filter(message -> !message.mayGoAgain())
                                .toList());
    }

    private static Map<UUID, Integer> read(List<String> texts) {
        Map<UUID, Integer> seen = new LinkedHashMap<>();
        for (String text : texts) {
            Matcher parts = SEEN.matcher(text);
            if (!parts.matches()) {
                throw new NotFoundException();
            }
            seen.put(UUID.fromString(parts.group(1)), Integer.parseInt(parts.group(2)));
        }
        return seen;
    }
}
