package rollbook.schedule;

import jakarta.validation.Valid;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
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
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.CameraUnits;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.production.Unit;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;

/** Adds, changes and removes single days. */
@Controller
@RequestMapping("/p/{production}/days")
class DayController {
    private final Schedule schedule;
    private final ShootingDays days;
    private final CameraUnits units;
    private final PlanGrids grids;

    DayController(Schedule schedule, ShootingDays days, CameraUnits units, PlanGrids grids) {
        this.schedule = schedule;
        this.days = days;
        this.units = units;
        this.grids = grids;
    }

    @GetMapping("/add")
    @AllowedFor(Role.OFFICE)
    String addForm(Membership membership, @RequestParam("unit") UUID unitId, Model model) {
        UUID production = membership.productionId();
        Unit unit = unit(production, unitId);
        List<ShootingDay> ofUnit = days.ofUnit(production, unitId);
        LocalDate date = UnitDays.lastDate(ofUnit)
                .map(last -> new WorkDates(UnitDays.weekdays(ofUnit, Set.of(DayOfWeek.MONDAY)), Set.of()).after(last))
                .orElse(null);
        model.addAttribute("unit", unit);
        model.addAttribute("dayForm", new DayForm(UnitDays.nextNumber(ofUnit), date, "", 0));
        model.addAttribute("grid", grids.of(production, unitId, days.latestPlan(production, unitId)));
        return "schedule/add";
    }

    @PostMapping("/add")
    @AllowedFor(Role.OFFICE)
    ModelAndView add(
            Membership membership,
            @RequestParam("unit") UUID unitId,
            @RequestParam Map<String, String> typed,
            @Valid @ModelAttribute DayForm dayForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        UUID production = membership.productionId();
        Unit unit = unit(production, unitId);
        PlanGrid grid = grids.read(production, unitId, days.latestPlan(production, unitId), typed, errors);
        DateBounds.check("date", dayForm == null ? null : dayForm.date(), errors);
        if (!errors.hasErrors()) {
            try {
                schedule.add(membership, unitId, dayForm.number(), dayForm.date(), dayForm.plainNote(), grid.plan());
                flash.addFlashAttribute("notice", Notice.of("schedule.day.added", dayForm.number(), unit.name()));
                return new ModelAndView("redirect:" + membership.path("days"));
            } catch (DayTaken taken) {
                DateBounds.reject(taken, errors);
            }
        }
        model.addAttribute("unit", unit);
        model.addAttribute("grid", grid);
        return new ModelAndView("schedule/add", model.asMap(), HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @GetMapping("/{id}/change")
    @AllowedFor(Role.OFFICE)
    String changeForm(Membership membership, @PathVariable UUID id, Model model) {
        UUID production = membership.productionId();
        ShootingDay day = days.get(production, id);
        model.addAttribute("day", day);
        model.addAttribute("dayForm", new DayForm(day.number(), day.date(), day.note(), day.version()));
        model.addAttribute("grid", grids.of(production, day.unitId(), days.plannedMinutes(production, id)));
        return "schedule/change";
    }

    @PostMapping("/{id}/change")
    @AllowedFor(Role.OFFICE)
    ModelAndView change(
            Membership membership,
            @PathVariable UUID id,
            @RequestParam Map<String, String> typed,
            @Valid @ModelAttribute DayForm dayForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        UUID production = membership.productionId();
        ShootingDay day = days.get(production, id);
        PlanGrid grid = grids.read(production, day.unitId(), days.plannedMinutes(production, id), typed, errors);
        DateBounds.check("date", dayForm == null ? null : dayForm.date(), errors);
        if (!errors.hasErrors()) {
            try {
                schedule.change(
                        membership,
                        id,
                        dayForm.number(),
                        dayForm.date(),
                        dayForm.plainNote(),
                        grid.plan(),
                        dayForm.version());
                flash.addFlashAttribute("notice", Notice.of("schedule.day.changed", dayForm.number()));
                return new ModelAndView("redirect:" + membership.path("days/" + id));
            } catch (DayTaken taken) {
                DateBounds.reject(taken, errors);
            }
        }
        model.addAttribute("day", day);
        model.addAttribute("grid", grid);
        return new ModelAndView("schedule/change", model.asMap(), HttpStatus.UNPROCESSABLE_CONTENT);
    }

    @PostMapping("/{id}/remove")
    @AllowedFor(Role.OFFICE)
    String remove(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        ShootingDay day = days.get(membership.productionId(), id);
        schedule.remove(membership, id);
        flash.addFlashAttribute("notice", Notice.of("schedule.day.removed", day.number(), day.unitName()));
        return "redirect:" + membership.path("days");
    }

    private Unit unit(UUID productionId, UUID unitId) {
        return units.units(productionId).stream()
                .filter(unit -> unit.id().equals(unitId))
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }
}
