package rollbook.production;

import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The page behind the production's name: what is set, for everyone to read. */
@Controller
class SettingsController {
    private final Productions productions;
    private final CameraUnits cameraUnits;
    private final Places places;
    private final CopyPlan copyPlan;
    private final Memberships memberships;
    private final PlanSentences sentences;

    SettingsController(
            Productions productions,
            CameraUnits cameraUnits,
            Places places,
            CopyPlan copyPlan,
            Memberships memberships,
            PlanSentences sentences) {
        this.productions = productions;
        this.cameraUnits = cameraUnits;
        this.places = places;
        this.copyPlan = copyPlan;
        this.memberships = memberships;
        this.sentences = sentences;
    }

    @GetMapping("/p/{production}/settings")
    String overview(Membership membership, Model model) {
        UUID id = membership.productionId();
        List<Place> allPlaces = places.list(id);
        ClearingRules rules = copyPlan.rules(id);
        model.addAttribute("settings", productions.get(id))
                .addAttribute("holidays", productions.holidays(id))
                .addAttribute("units", cameraUnits.units(id))
                .addAttribute("cameras", cameraUnits.cameras(id))
                .addAttribute("places", allPlaces)
                .addAttribute("legs", rules.legs())
                .addAttribute("legSentences", sentences.legs(rules.legs()))
                .addAttribute("members", memberships.members(id))
                .addAttribute("policies", sentences.policies(rules))
                .addAttribute("gaps", sentences.gaps(rules, MediaKind.CARD, allPlaces))
                .addAttribute("sentence", sentences.overview(rules));
        return "production/settings";
    }
}
