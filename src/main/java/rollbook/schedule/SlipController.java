package rollbook.schedule;

import jakarta.validation.Valid;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
import rollbook.production.Productions;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.Notice;
import rollbook.web.Refusal;

/** Moves a day and the rest of its unit's schedule; shows first what will move. */
@Controller
@RequestMapping("/p/{production}/days/{id}/slip")
class SlipController {
    private final Schedule schedule;
    private final ShootingDays days;
    private final Productions productions;
    private final Display display;

    SlipController(Schedule schedule, ShootingDays days, Productions productions, Display display) {
        this.schedule = schedule;
        this.days = days;
        this.productions = productions;
        this.display = display;
    }

    @GetMapping
    @AllowedFor(Role.OFFICE)
    String form(Membership membership, @PathVariable UUID id, Model model) {
        ShootingDay day = planned(membership, id);
        List<ShootingDay> ofUnit = days.ofUnit(membership.productionId(), day.unitId());
        describe(model, day);
        model.addAttribute("slipForm", new SlipForm(null, 1, UnitDays.weekdays(ofUnit, Set.of()), false, null));
        return "schedule/slip";
    }

    @GetMapping(params = "show")
    @AllowedFor(Role.OFFICE)
    ModelAndView show(
            Membership membership,
            @PathVariable UUID id,
            @Valid @ModelAttribute SlipForm slipForm,
            BindingResult errors,
            Model model) {
        ShootingDay day = planned(membership, id);
        describe(model, day);
        Optional<Slip> slip = slip(membership, day, slipForm, errors);
        slip.ifPresent(moves -> {
            model.addAttribute("slip", moves);
            model.addAttribute("fingerprint", moves.fingerprint());
            model.addAttribute("holidays", productions.holidays(membership.productionId()));
        });
        return new ModelAndView(
                "schedule/slip", model.asMap(), slip.isPresent() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @PostMapping
    @AllowedFor(Role.OFFICE)
    ModelAndView move(
            Membership membership,
            @PathVariable UUID id,
            @Valid @ModelAttribute SlipForm slipForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        ShootingDay day = planned(membership, id);
        Optional<Slip> slip = slip(membership, day, slipForm, errors);
        if (slip.isEmpty()) {
            describe(model, day);
            return new ModelAndView("schedule/slip", model.asMap(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        if (!slip.get().fingerprint().equals(slipForm.seen())) {
            throw new Refusal("schedule.refused.changed-meanwhile", day.number());
        }
        schedule.slip(membership, slip.get());
        flash.addFlashAttribute(
                "notice",
                Notice.of(
                        "schedule.day.slipped",
                        day.number(),
                        display.date(slip.get().moves().get(0).to()),
                        slip.get().changes().size() - 1));
        return new ModelAndView("redirect:" + membership.path("days"));
    }

    private Optional<Slip> slip(Membership membership, ShootingDay day, SlipForm form, BindingResult errors) {
        if (errors.hasErrors()) {
            return Optional.empty();
        }
        DateBounds.check("date", form.date(), errors);
        if (form.date() == null && form.steps() == null) {
            errors.rejectValue("date", "schedule.invalid.slip-nothing");
        }
        if (errors.hasErrors()) {
            return Optional.empty();
        }
        UUID production = membership.productionId();
        List<ShootingDay> ofUnit = days.ofUnit(production, day.unitId());
        Map<LocalDate, String> holidays = productions.holidays(production);
        Set<LocalDate> leftOut = form.skipHolidays() ? holidays.keySet() : Set.of();
        try {
            return Optional.of(
                    form.date() == null
                            ? Slip.by(form.steps(), day, ofUnit, form.weekdays(), leftOut)
                            : Slip.to(form.date(), day, ofUnit, form.weekdays(), leftOut));
        } catch (DayTaken taken) {
            DateBounds.reject(taken, errors);
            return Optional.empty();
        }
    }

    private ShootingDay planned(Membership membership, UUID id) {
        ShootingDay day = days.get(membership.productionId(), id);
        if (day.state() != DayState.PLANNED) {
            throw new Refusal("schedule.refused.is." + day.state(), day.number());
        }
        return day;
    }

    private static void describe(Model model, ShootingDay day) {
        model.addAttribute("day", day);
        model.addAttribute("weekdays", DayOfWeek.values());
    }
}
