package rollbook.reporting;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import rollbook.production.Membership;

@Controller
class TodayController {
    private final TodayPage today;
    private final WallPage wall;

    TodayController(TodayPage today, WallPage wall) {
        this.today = today;
        this.wall = wall;
    }

    @GetMapping("/p/{production}/today")
    String today(Membership membership, Model model) {
        model.addAttribute("view", today.view(membership));
        return "reporting/today";
    }

    @GetMapping("/p/{production}/wall")
    String wall(Membership membership, Model model) {
        model.addAttribute("view", wall.view(membership));
        return "reporting/wall";
    }

    @GetMapping("/p/{production}")
    String start(Membership membership) {
        return "redirect:" + membership.path("today");
    }
}
