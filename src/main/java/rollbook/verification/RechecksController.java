package rollbook.verification;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.verification.RecheckSchedule.Due;
import rollbook.verification.RecheckSchedule.State;
import rollbook.web.Display;
import rollbook.web.Notice;

/** Which media must be read again, and how often. */
@Controller
class RechecksController {
    private final Rechecks rechecks;
    private final Display display;

    RechecksController(Rechecks rechecks, Display display) {
        this.rechecks = rechecks;
        this.display = display;
    }

    /** Days between two checks; empty for none. */
    record PlanForm(
            @Min(1) @Max(3650) @Nullable Integer driveDays,
            @Min(1) @Max(3650) @Nullable Integer arrayDays,
            @Min(1) @Max(3650) @Nullable Integer tapeDays,
            int version) {
        static PlanForm of(RecheckPlan plan) {
            return new PlanForm(plan.driveDays(), plan.arrayDays(), plan.tapeDays(), plan.version());
        }

        RecheckPlan plan() {
            return new RecheckPlan(driveDays, arrayDays, tapeDays, version);
        }
    }

    @GetMapping("/p/{production}/re-checks")
    String list(Membership membership, Model model) {
        RecheckPlan plan = rechecks.plan(membership.productionId());
        List<Due> schedule = rechecks.schedule(membership);
        List<Rechecks.Failed> failed = rechecks.failed(membership.productionId());
        model.addAttribute("plan", plan)
                .addAttribute("schedule", schedule)
                .addAttribute("failed", failed)
                .addAttribute("mayPlan", mayPlan(membership))
                .addAttribute("sentence", sentence(plan, schedule, failed));
        return "verification/rechecks";
    }

    private String sentence(RecheckPlan plan, List<Due> schedule, List<Rechecks.Failed> failed) {
        if (!failed.isEmpty()) {
            return display.text("verification.recheck.sentence.failed", failed.size());
        }
        if (plan.isEmpty()) {
            return display.text("verification.recheck.sentence.none");
        }
        long overdue =
                schedule.stream().filter(due -> due.state() == State.OVERDUE).count();
        long soon = schedule.stream().filter(due -> due.state() == State.DUE).count();
        return overdue + soon == 0
                ? display.text("verification.recheck.sentence.fine")
                : display.text(
                        "verification.recheck.sentence.due",
                        overdue,
                        soon,
                        schedule.get(0).itemCode());
    }

    private static boolean mayPlan(Membership membership) {
        return membership.mayAdminister()
                || membership.roles().contains(Role.POST)
                || membership.roles().contains(Role.OFFICE);
    }

    @AllowedFor({Role.POST, Role.OFFICE})
    @GetMapping("/p/{production}/re-checks/plan")
    ModelAndView askForPlan(Membership membership) {
        return new ModelAndView("verification/recheck-plan")
                .addObject("planForm", PlanForm.of(rechecks.plan(membership.productionId())));
    }

    @AllowedFor({Role.POST, Role.OFFICE})
    @PostMapping("/p/{production}/re-checks/plan")
    ModelAndView changePlan(
            Membership membership,
            @Valid @ModelAttribute PlanForm form,
            BindingResult errors,
            RedirectAttributes flash) {
        if (errors.hasErrors()) {
            return new ModelAndView("verification/recheck-plan", HttpStatus.UNPROCESSABLE_CONTENT);
        }
        rechecks.changePlan(membership, form.plan());
        flash.addFlashAttribute("notice", Notice.of("verification.recheck.plan.saved"));
        return new ModelAndView("redirect:" + membership.path("re-checks"));
    }
}
