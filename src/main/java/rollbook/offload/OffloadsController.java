package rollbook.offload;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rollbook.production.Membership;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Listing;
import rollbook.web.Paged;

/** The sessions that run, and those that have ended. */
@Controller
@RequestMapping("/p/{production}/offloads")
class OffloadsController {
    private final Offloads offloads;
    private final EndedOffloads ended;
    private final SessionPages pages;
    private final ShowRates showRates;
    private final Display display;

    OffloadsController(
            Offloads offloads, EndedOffloads ended, SessionPages pages, ShowRates showRates, Display display) {
        this.ended = ended;
        this.offloads = offloads;
        this.pages = pages;
        this.showRates = showRates;
        this.display = display;
    }

    @GetMapping
    ModelAndView list(Membership by, @RequestParam Map<String, String> address) {
        LearnedOffloads learned = showRates.of(by.productionId());
        List<Line> running = offloads.running(by.productionId()).stream()
                .map(offload -> new Line(offload, expected(learned, offload), ""))
                .toList();
        Listing list = Listing.of(by.path("offloads"), address);
        Paged<Offload> page = ended.page(by.productionId(), wanted(list), list.page());
        long all = ended.count(by.productionId(), EndedOffloads.Wanted.ALL);
        return new ModelAndView("offload/offloads")
                .addObject("place", "rolls")
                .addObject("running", running)
                .addObject("list", list)
                .addObject("all", all)
                .addObject(
                        "ended",
                        new Paged<>(
                                page.rows().stream().map(this::ended).toList(),
                                page.number(),
                                page.size(),
                                page.total()))
                .addObject("sentence", display.text("offload.list.sentence", running.size(), all));
    }

    private EndedOffloads.Wanted wanted(Listing list) {
        String outcome = list.choose(
                "outcome",
                display.text("offload.session.state"),
                display.text("offload.list.any-outcome"),
                Stream.of(Offload.Outcome.FINISHED, Offload.Outcome.ABANDONED)
                        .map(one -> new Choice(one.name(), display.text("offload.outcome." + one)))
                        .toList());
        String text = list.text("q", display.text("offload.list.text"));
        return new EndedOffloads.Wanted(
                outcome,
                text,
                list.order(
                        EndedOffloads.Column.values(),
                        EndedOffloads.Wanted.ALL.order(),
                        column -> display.text("offload.list.column." + column.name())));
    }

    /** By the show’s own rates, where they are known. */
    private static @Nullable Long expected(LearnedOffloads learned, Offload offload) {
        return learned.expected(offload.id())
                .filter(ExpectedRates::isLearned)
                .map(expected -> ExpectedRates.rounded(expected.rate().rate()))
                .orElse(offload.expectedBytesPerSecond());
    }

    /** Compared with what the inventory states. */
    private Line ended(Offload offload) {
        Double difference = Estimates.difference(offload.measuredBytesPerSecond(), offload.expectedBytesPerSecond());
        return new Line(
                offload, offload.expectedBytesPerSecond(), difference == null ? "" : pages.comparison(difference));
    }

    /** @param comparison of the measured rate with the expected one, in words; empty if one is unknown */
    record Line(Offload offload, @Nullable Long expectedBytesPerSecond, String comparison) {}
}
