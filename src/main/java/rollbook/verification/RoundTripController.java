package rollbook.verification;

import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.web.Display;
import rollbook.web.NotFoundException;

/** A verdict on the decoded files of a roll: which of them don't equal the card's. */
@Controller
class RoundTripController {
    private final Rolls rolls;
    private final Verdicts verdicts;
    private final Display display;

    RoundTripController(Rolls rolls, Verdicts verdicts, Display display) {
        this.rolls = rolls;
        this.verdicts = verdicts;
        this.display = display;
    }

    /** @throws NotFoundException if the roll has no such verdict on decoded files */
    @GetMapping("/p/{production}/rolls/{roll}/round-trips/{verdict}")
    String show(Membership membership, @PathVariable UUID roll, @PathVariable long verdict, Model model) {
        UUID production = membership.productionId();
        Roll decoded = rolls.get(production, roll);
        CopyVerdict judged = verdicts.history(production, roll).stream()
                .filter(one -> one.copyId() == null && Objects.equals(one.id(), verdict))
                .findFirst()
                .orElseThrow(NotFoundException::new);
        List<Verdicts.Difference> files = verdicts.differences(production, verdict);
        model.addAttribute("roll", decoded);
        model.addAttribute("verdict", judged);
        model.addAttribute("reasons", ReasonKeys.texts(display, judged));
        model.addAttribute("wrong", judged.counts().wrong());
        model.addAttribute("files", files);
        model.addAttribute("cut", files.size() >= Verdicts.DIFFERENCES_KEPT);
        return "verification/round-trip";
    }
}
