package rollbook.verification;

import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.web.Display;

/** The clips of the show, to be found by name, and those of one roll with what a person should look at. */
@Controller
class ClipController {
    private final ClipSearch search;
    private final ClipSummaries clips;
    private final RollWarnings warnings;
    private final Rolls rolls;
    private final Display display;

    ClipController(ClipSearch search, ClipSummaries clips, RollWarnings warnings, Rolls rolls, Display display) {
        this.search = search;
        this.clips = clips;
        this.warnings = warnings;
        this.rolls = rolls;
        this.display = display;
    }

    @ModelAttribute("place")
    String place() {
        return "rolls";
    }

    @GetMapping("/p/{production}/clips")
    String search(
            Membership membership,
            @RequestParam(defaultValue = "") String q,
            @RequestParam(defaultValue = "") String after,
            Model model) {
        ClipSearch.Page page = search.find(membership.productionId(), q, after);
        model.addAttribute("q", q.strip());
        model.addAttribute("page", page);
        model.addAttribute("sentence", sentence(q.strip(), page, after));
        return "verification/clips";
    }

    private String sentence(String q, ClipSearch.Page page, String after) {
        long names =
                page.clips().stream().map(ClipSearch.Found::clip).distinct().count();
        if (names == 0) {
            return q.isEmpty()
                    ? display.text("verification.clips.sentence.none")
                    : display.text("verification.clips.sentence.unknown", q);
        }
        if (names == 1 && after.isEmpty()) {
            return sentence(page.clips());
        }
        return page.next() == null && after.isEmpty()
                ? display.text("verification.clips.sentence.all", names)
                : display.text(
                        "verification.clips.sentence.some",
                        page.clips().get(0).clip(),
                        page.clips().get(page.clips().size() - 1).clip());
    }

    /** One clip: which roll it belongs to, and on how many media it is proven. */
    private String sentence(List<ClipSearch.Found> one) {
        ClipSearch.Found clip = one.get(0);
        ClipSearch.OfRoll roll = clip.roll();
        if (roll == null) {
            return display.text("verification.clips.sentence.no-roll", clip.clip());
        }
        long proven = clip.copies().stream()
                .filter(copy -> copy.verdict() == rollbook.manifest.Verdict.PROVEN && copy.listsClip())
                .count();
        return one.size() > 1
                ? display.text("verification.clips.sentence.two-rolls", clip.clip(), one.size())
                : display.text("verification.clips.sentence.one", clip.clip(), roll.code(), proven);
    }

    @GetMapping("/p/{production}/rolls/{roll}/clips")
    String ofRoll(Membership membership, @PathVariable("roll") UUID rollId, Model model) {
        Roll roll = rolls.get(membership.productionId(), rollId);
        ClipSummaries.Told told = clips.told(membership.productionId(), rollId);
        List<RollWarnings.View> views = warnings.of(membership.productionId(), roll, told);
        model.addAttribute("roll", roll);
        model.addAttribute("clips", told.clips());
        model.addAttribute("warnings", views);
        model.addAttribute(
                "sentence",
                display.text(
                        "verification.roll-clips.sentence",
                        told.clips().size(),
                        views.stream().filter(RollWarnings.View::remark).count()));
        return "verification/roll-clips";
    }
}
