package rollbook.calendar;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.Notice;
import rollbook.web.PortalAddress;
import rollbook.web.Secret;

/** Says what stands in a person's calendar, and makes and revokes its address. Everybody has their own. */
@Controller
class CalendarController {
    private final Feeds feeds;
    private final Entries entries;
    private final PortalAddress address;
    private final Display display;
    private final Clock clock;

    CalendarController(Feeds feeds, Entries entries, PortalAddress address, Display display, Clock clock) {
        this.feeds = feeds;
        this.entries = entries;
        this.address = address;
        this.display = display;
        this.clock = clock;
    }

    @GetMapping("/p/{production}/calendar")
    ModelAndView calendar(Membership membership) {
        List<Entry> due = entries.of(membership);
        Feed feed = feeds.of(membership).orElse(null);
        LocalDate today = LocalDate.ofInstant(clock.instant(), membership.zone());
        long passed = due.stream().filter(entry -> entry.date().isBefore(today)).count();
        return new ModelAndView("calendar/calendar")
                .addObject("feed", feed)
                .addObject("entries", due)
                .addObject("today", today)
                .addObject(
                        "sentence",
                        display.text(
                                feed == null ? "calendar.sentence.none" : "calendar.sentence", due.size(), passed));
    }

    /** Answers with the address itself rather than with a redirect, so that it is kept nowhere, not even in a session. */
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST, Role.READER})
    @PostMapping("/p/{production}/calendar/address")
    ModelAndView make(
            Membership membership, @RequestParam(required = false) @Nullable UUID before, HttpServletRequest request) {
        Secret secret = feeds.make(membership, before);
        String base = address.base(request);
        return new ModelAndView("calendar/address")
                .addObject("address", base + "/calendar/" + secret.text() + ".ics")
                .addObject("replaced", before != null)
                .addObject("opensHereOnly", PortalAddress.isThisMachine(base));
    }

    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST, Role.READER})
    @PostMapping("/p/{production}/calendar/revocation")
    String revoke(Membership membership, @RequestParam UUID before, RedirectAttributes flash) {
        feeds.revoke(membership, before);
        flash.addFlashAttribute("notice", Notice.of("calendar.revoked"));
        return "redirect:" + membership.path("calendar");
    }
}
