package rollbook.verification;

import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import rollbook.production.Membership;

@Controller
class RollsController {
    private final RollBoard board;
    private final RollListing listing;
    private final ProofOverview overview;

    RollsController(RollBoard board, RollListing listing, ProofOverview overview) {
        this.board = board;
        this.listing = listing;
        this.overview = overview;
    }

    @GetMapping("/p/{production}/rolls")
    String rolls(
            Membership membership,
            @RequestParam(name = "day", required = false) @Nullable UUID day,
            @RequestParam Map<String, String> address,
            Model model) {
        RollBoard.Board shown = board.board(membership, day);
        RollListing.Asked asked = listing.read(membership.path("rolls"), address, shown);
        model.addAttribute("board", shown);
        model.addAttribute("list", asked.listing());
        model.addAttribute("rows", asked.rows());
        model.addAttribute(
                "overview",
                overview.view(
                        membership.productionId(),
                        shown.legs(),
                        shown.day() == null ? null : shown.day().id()));
        return "verification/rolls";
    }
}
