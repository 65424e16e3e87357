package rollbook.forecast;

import jakarta.validation.Valid;
import java.time.Clock;
import java.time.LocalDate;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.CopyPlan;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Notice;

/** What people do with a flag. */
@Controller
class FlagController {
    private static final int USUAL_SNOOZE_DAYS = 3;

    private final FlagActs flags;
    private final CopyPlan plan;
    private final Clock clock;

    FlagController(FlagActs flags, CopyPlan plan, Clock clock) {
        this.flags = flags;
        this.plan = plan;
        this.clock = clock;
    }

    @PostMapping("/p/{production}/storage/flags/{flagId}/acknowledgement")
    @AllowedFor(Role.OFFICE)
    String acknowledge(
            Membership membership,
            @PathVariable UUID flagId,
            @RequestParam(defaultValue = "0") int lastAct,
            RedirectAttributes flash) {
        String legName = flags.acknowledge(membership, flagId, lastAct);
        return back(membership, "forecast.flag.acknowledged", legName, flash);
    }

    @PostMapping("/p/{production}/storage/flags/{flagId}/reopening")
    @AllowedFor(Role.OFFICE)
    String reopen(
            Membership membership,
            @PathVariable UUID flagId,
            @RequestParam(defaultValue = "0") int lastAct,
            RedirectAttributes flash) {
        String legName = flags.reopen(membership, flagId, lastAct);
        return back(membership, "forecast.flag.reopened", legName, flash);
    }

    @GetMapping("/p/{production}/storage/flags/{flagId}/snooze")
    @AllowedFor(Role.OFFICE)
    String snooze(Membership membership, @PathVariable UUID flagId, Model model) {
        PoolFlag flag = flags.get(membership.productionId(), flagId);
        addFlag(membership, flag, model);
        model.addAttribute(
                "snoozeForm",
                new SnoozeForm(
                        "",
                        today(membership).plusDays(USUAL_SNOOZE_DAYS),
                        flag.last().number()));
        return "forecast/snooze";
    }

    @PostMapping("/p/{production}/storage/flags/{flagId}/snooze")
    @AllowedFor(Role.OFFICE)
    ModelAndView snooze(
            Membership membership,
            @PathVariable UUID flagId,
            @Valid SnoozeForm snoozeForm,
            BindingResult wrong,
            Model model,
            RedirectAttributes flash) {
        PoolFlag flag = flags.get(membership.productionId(), flagId);
        if (!wrong.hasErrors() && !snoozeForm.until().isAfter(today(membership))) {
            wrong.rejectValue("until", "forecast.snooze.until.past");
        }
        if (wrong.hasErrors()) {
            addFlag(membership, flag, model);
            ModelAndView page = new ModelAndView("forecast/snooze", wrong.getModel());
            page.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return page;
        }
        String legName =
                flags.snooze(membership, flagId, snoozeForm.reason().strip(), snoozeForm.until(), snoozeForm.lastAct());
        return new ModelAndView(back(membership, "forecast.flag.snoozed", legName, flash));
    }

    private void addFlag(Membership membership, PoolFlag flag, Model model) {
        model.addAttribute("flagId", flag.id());
        model.addAttribute("leg", plan.leg(membership.productionId(), flag.legId()));
    }

    private static String back(Membership membership, String key, String legName, RedirectAttributes flash) {
        flash.addFlashAttribute("notice", Notice.of(key, legName));
        return "redirect:" + membership.path("storage");
    }

    private LocalDate today(Membership membership) {
        return LocalDate.ofInstant(clock.instant(), membership.zone());
    }
}
