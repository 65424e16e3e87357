package rollbook.report;

import jakarta.validation.Valid;
import java.util.Objects;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.Notice;

/** Signs a day's report, and takes a signature back. */
@Controller
@RequestMapping("/p/{production}/days/{day}/report/sign-offs")
class SignOffController {
    private final DayReports reports;
    private final SignOffs signOffs;
    private final DayViews views;
    private final Display display;

    SignOffController(DayReports reports, SignOffs signOffs, DayViews views, Display display) {
        this.reports = reports;
        this.signOffs = signOffs;
        this.views = views;
        this.display = display;
    }

    @PostMapping
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView sign(
            Membership membership,
            @PathVariable("day") UUID dayId,
            @Valid @ModelAttribute SignForm signForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        if (errors.hasErrors()) {
            DayReport report = reports.of(membership.productionId(), dayId);
            model.addAttribute(
                    "view", views.of(report, signOffs.ofDay(membership.productionId(), dayId), membership, false));
            return new ModelAndView("report/day", model.asMap(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        signOffs.sign(
                membership,
                dayId,
                Objects.requireNonNull(signForm.sha256()),
                Objects.requireNonNullElse(signForm.remark(), ""));
        flash.addFlashAttribute("notice", Notice.of("report.signed"));
        return back(membership, dayId);
    }

    /** Where a browser lands that loads the page of a refused form again. */
    @GetMapping
    ModelAndView backToReport(Membership membership, @PathVariable("day") UUID dayId) {
        return back(membership, dayId);
    }

    @GetMapping("/{signOff}/withdrawal")
    String withdrawForm(
            Membership membership,
            @PathVariable("day") UUID dayId,
            @PathVariable("signOff") UUID signOffId,
            Model model) {
        describe(membership, dayId, signOffId, model);
        model.addAttribute("withdrawForm", new WithdrawForm(""));
        return "report/withdraw";
    }

    @PostMapping("/{signOff}/withdrawal")
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST})
    ModelAndView withdraw(
            Membership membership,
            @PathVariable("day") UUID dayId,
            @PathVariable("signOff") UUID signOffId,
            @Valid @ModelAttribute WithdrawForm withdrawForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        if (errors.hasErrors()) {
            describe(membership, dayId, signOffId, model);
            return new ModelAndView("report/withdraw", model.asMap(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        signOffs.withdraw(membership, dayId, signOffId, Objects.requireNonNull(withdrawForm.reason()));
        flash.addFlashAttribute("notice", Notice.of("report.withdrawn"));
        return back(membership, dayId);
    }

    private void describe(Membership membership, UUID dayId, UUID signOffId, Model model) {
        SignOff signOff = signOffs.get(membership.productionId(), dayId, signOffId);
        model.addAttribute("signOff", signOff);
        model.addAttribute("home", membership.path("days/" + dayId + "/report"));
        model.addAttribute("own", signOff.stands() && signOff.signedBy().equals(membership.personId()));
        model.addAttribute(
                "sentence",
                display.text(
                        "report.withdraw.sentence",
                        signOff.signedByName(),
                        display.moment(signOff.signedAt(), membership.zone())));
    }

    private static ModelAndView back(Membership membership, UUID dayId) {
        return new ModelAndView("redirect:" + membership.path("days/" + dayId + "/report"));
    }
}
