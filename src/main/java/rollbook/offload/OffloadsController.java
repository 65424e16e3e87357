package rollbook.offload;

import java.util.List;
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
    private final Display display;

    OffloadsController(Offloads offloads, SessionPages pages, Display display) {
        this.offloads = offloads;
        this.pages = pages;
        this.display = display;
    }

    @GetMapping
    ModelAndView list(Membership by, @RequestParam(defaultValue = "1") int page) {
        int number = Math.max(1, page);
        List<Line> running =
                offloads.running(by.productionId()).stream().map(this::line).toList();
        List<Line> ended = offloads.ended(by.productionId(), Paged.SIZE, Paged.offset(number, Paged.SIZE)).stream()
                .map(this::line)
                .toList();
        long total = offloads.countEnded(by.productionId());
        return new ModelAndView("offload/offloads")
                .addObject("place", "rolls")
                .addObject("running", running)
                .addObject("ended", new Paged<>(ended, number, Paged.SIZE, total))
                .addObject("sentence", display.text("offload.list.sentence", running.size(), total));
    }

    private Line line(Offload offload) {
        Double difference = Estimates.difference(offload.measuredBytesPerSecond(), offload.expectedBytesPerSecond());
        return new Line(offload, difference == null ? "" : pages.comparison(difference));
    }

    /** @param comparison of the measured rate with the expected one, in words; empty if one is unknown */
    record Line(Offload offload, String comparison) {}
}
