package rollbook.scenario;

import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Notice;
import rollbook.web.Refusal;

/** A day played through: as the production knows it, or with other figures. Trying changes nothing, so it is a GET. */
@Controller
class TurnaroundController {
    private final DayFactsReading reading;
    private final ScenarioDrafts drafts;
    private final Scenarios scenarios;
    private final TurnaroundPages pages;

    TurnaroundController(DayFactsReading reading, ScenarioDrafts drafts, Scenarios scenarios, TurnaroundPages pages) {
        this.reading = reading;
        this.drafts = drafts;
        this.scenarios = scenarios;
        this.pages = pages;
    }

    @ModelAttribute("place")
    String place() {
        return "days";
    }

    @GetMapping("/p/{production}/turnaround")
    ModelAndView play(
            Membership membership,
            @RequestParam(name = "day", required = false) @Nullable UUID dayId,
            @RequestParam Map<String, String> typed) {
        DayFactsReading.Found found = reading.of(membership, dayId);
        Missing missing = Missing.of(found.chosen());
        if (missing != Missing.NOTHING) {
            return pages.nothing(missing, found, membership);
        }
        return pages.play(sheet(membership, found, typed), found, membership);
    }

    @PostMapping("/p/{production}/turnaround/scenarios")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView save(
            Membership membership,
            @RequestParam(name = "day", required = false) @Nullable UUID dayId,
            @RequestParam(defaultValue = "") String scenario,
            @RequestParam Map<String, String> typed,
            RedirectAttributes flash) {
        DayFactsReading.Found found = reading.of(membership, dayId);
        Missing missing = Missing.of(found.chosen());
        if (missing != Missing.NOTHING) {
            return wrong(pages.nothing(missing, found, membership));
        }
        Sheet sheet = sheet(membership, found, typed);
        ScenarioName name = ScenarioName.of(scenario);
        if (!sheet.isRight() || !name.isRight()) {
            return wrong(pages.play(sheet, found, membership).addObject("name", name));
        }
        UUID id;
        try {
            id = scenarios.save(membership, name.text(), ScenarioDrafts.inputs(sheet));
        } catch (Refusal taken) {
            if (!taken.key().equals(Scenarios.NAME_TAKEN)) {
                throw taken;
            }
            return wrong(pages.play(sheet, found, membership).addObject("name", name.taken()));
        }
        flash.addFlashAttribute("notice", Notice.of("scenario.saved", name.text()));
        return new ModelAndView("redirect:" + membership.path("turnaround/scenarios/" + id));
    }

    private Sheet sheet(Membership membership, DayFactsReading.Found found, Map<String, String> typed) {
        return drafts.sheet(membership, found.chosen(), typed);
    }

    private static ModelAndView wrong(ModelAndView page) {
        page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
        return page.addObject("invalid", true);
    }
}
