package rollbook.offload;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import rollbook.production.Membership;
import rollbook.web.Display;
import rollbook.web.Paged;

/** The sessions that run, and those that have ended. */
@Controller
@RequestMapping("/p/{production}/offloads")
class OffloadsController {
    private final Offloads offloads;
    private final SessionPages pages;
    private final ShowRates showRates;
    private final Display display;

    OffloadsController(Offloads offloads, SessionPages pages, ShowRates showRates, Display display) {
        this.offloads = offloads;
        this.pages = pages;
        this.showRates = showRates;
        this.display = display;
    }

    @GetMapping
    ModelAndView list(Membership by, @RequestParam(defaultValue = "1") int page) {
        int number = Math.max(1, page);
        LearnedOffloads learned = showRates.of(by.productionId());
        List<Line> running = offloads.running(by.productionId()).stream()
                .map(offload -> new Line(offload, expected(learned, offload), ""))
                .toList();
        List<Line> ended = offloads.ended(by.productionId(), Paged.SIZE, Paged.offset(number, Paged.SIZE)).stream()
                .map(this::ended)
                .toList();
        long total = offloads.countEnded(by.productionId());
        return new ModelAndView("offload/offloads")
                .addObject("place", "rolls")
                .addObject("running", running)
                .addObject("ended", new Paged<>(ended, number, Paged.SIZE, total))
                .addObject("sentence", display.text("offload.list.sentence", running.size(), total));
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
