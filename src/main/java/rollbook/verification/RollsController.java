package rollbook.verification;

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

    RollsController(RollBoard board) {
        this.board = board;
    }

    @GetMapping("/p/{production}/rolls")
    String rolls(Membership membership, @RequestParam(name = "day", required = false) @Nullable UUID day, Model model) {
        model.addAttribute("board", board.board(membership, day));
        return "verification/rolls";
    }
}
