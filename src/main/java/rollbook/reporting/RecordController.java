package rollbook.reporting;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import rollbook.audit.ActFilter;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Listing;
import rollbook.web.Paged;

/** The record of who did what. */
@Controller
class RecordController {
    private static final Listing.Order<ActFilter.Column> NEWEST_FIRST =
            new Listing.Order<>(ActFilter.Column.WHEN, true);

    private final AuditTrail trail;
    private final Display display;

    RecordController(AuditTrail trail, Display display) {
        this.trail = trail;
        this.display = display;
    }

    @GetMapping("/p/{production}/record")
    String record(Membership membership, @RequestParam Map<String, String> address, Model model) {
        UUID production = membership.productionId();
        Listing list = Listing.of(membership.path("record"), address);
        String text = list.text("text", display.text("reporting.record.filter"));
        String kind = list.choose(
                "about",
                display.text("reporting.record.about"),
                display.text("reporting.record.any"),
                kinds(production));
        LocalDate from = list.date("from", display.text("reporting.record.from"));
        LocalDate to = list.date("to", display.text("reporting.record.to"));
        Listing.Order<ActFilter.Column> order = list.order(
                ActFilter.Column.values(),
                NEWEST_FIRST,
                column -> display.text("reporting.record.column." + column.name()));
        ActFilter filter = new ActFilter(
                text,
                kind,
                startOf(from, membership.zone()),
                startOf(to == null ? null : to.plusDays(1), membership.zone()));
        long found = trail.count(production, filter);
        int page = Paged.shown(list.page(), found);
        model.addAttribute("list", list);
        model.addAttribute("all", trail.count(production, ActFilter.ALL));
        model.addAttribute(
                "acts",
                new Paged<>(
                        trail.list(production, filter, order, Paged.offset(page, Paged.SIZE), Paged.SIZE),
                        page,
                        Paged.SIZE,
                        found));
        return "reporting/record";
    }

    private List<Choice> kinds(UUID production) {
        return trail.subjectKinds(production).stream()
                .map(kind -> new Choice(kind, display.text("audit.subject." + kind)))
                .sorted(Comparator.comparing(Choice::text))
                .toList();
    }

    private static @Nullable Instant startOf(@Nullable LocalDate date, ZoneId zone) {
        return date == null ? null : date.atStartOfDay(zone).toInstant();
    }
}
