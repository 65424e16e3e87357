package rollbook.schedule;

import jakarta.validation.Valid;
import java.time.Clock;
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
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.CameraUnits;
import rollbook.production.Membership;
import rollbook.production.Productions;
import rollbook.production.Role;
import rollbook.production.Unit;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;

/** Enters a whole schedule. */
@Controller
@RequestMapping("/p/{production}/days/new")
class EntryController {
    private final Schedule schedule;
    private final ShootingDays days;
    private final CameraUnits units;
    private final Productions productions;
    private final PlanGrids grids;
    private final Display display;
    private final Clock clock;

    EntryController(
            Schedule schedule,
            ShootingDays days,
            CameraUnits units,
            Productions productions,
            PlanGrids grids,
            Display display,
            Clock clock) {
        this.schedule = schedule;
        this.days = days;
        this.units = units;
        this.productions = productions;
        this.grids = grids;
        this.display = display;
        this.clock = clock;
    }

    @GetMapping
    @AllowedFor(Role.OFFICE)
    String form(Membership membership, @RequestParam("unit") Optional<UUID> unitId, Model model) {
        List<Unit> all = units.units(membership.productionId());
        if (!all.isEmpty()) {
            Unit unit = unitId.map(id -> find(all, id)).orElse(all.get(0));
            List<ShootingDay> ofUnit = days.ofUnit(membership.productionId(), unit.id());
            describe(model, all, unit);
            model.addAttribute("entryForm", suggestion(membership, ofUnit));
            model.addAttribute(
                    "grid",
                    grids.of(
                            membership.productionId(),
                            unit.id(),
                            days.latestPlan(membership.productionId(), unit.id())));
        }
        return "schedule/entry";
    }

    @PostMapping
    @AllowedFor(Role.OFFICE)
    ModelAndView enter(
            Membership membership,
            @RequestParam("unit") UUID unitId,
            @RequestParam Map<String, String> typed,
            @Valid @ModelAttribute EntryForm entryForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        UUID production = membership.productionId();
        List<Unit> all = units.units(production);
        Unit unit = find(all, unitId);
        PlanGrid grid = grids.read(production, unitId, days.latestPlan(production, unitId), typed, errors);
        DateBounds.check("startDate", entryForm == null ? null : entryForm.startDate(), errors);
        if (!errors.hasErrors()) {
            List<LocalDate> dates = dates(membership, entryForm);
            try {
                schedule.enter(membership, new NewSchedule(unitId, entryForm.firstNumber(), dates, grid.plan()));
                flash.addFlashAttribute("notice", notice(unit, dates));
                return new ModelAndView("redirect:" + membership.path("days"));
            } catch (DayTaken taken) {
                DateBounds.reject(taken, errors);
            }
        }
        describe(model, all, unit);
        model.addAttribute("grid", grid);
        return new ModelAndView("schedule/entry", model.asMap(), HttpStatus.UNPROCESSABLE_CONTENT);
    }

    private List<LocalDate> dates(Membership membership, EntryForm form) {
        Set<LocalDate> without = form.skipHolidays()
                ? productions.holidays(membership.productionId()).keySet()
                : Set.of();
        return new WorkDates(form.weekdays(), without).from(form.startDate(), form.days());
    }

    private EntryForm suggestion(Membership membership, List<ShootingDay> ofUnit) {
        Set<DayOfWeek> weekdays = UnitDays.weekdays(
                ofUnit, productions.get(membership.productionId()).workingDays());
        LocalDate today = LocalDate.now(clock.withZone(membership.zone()));
        LocalDate after = UnitDays.lastDate(ofUnit).filter(today::isBefore).orElse(today);
        LocalDate start = weekdays.isEmpty() ? after.plusDays(1) : new WorkDates(weekdays, Set.of()).after(after);
        return new EntryForm(start, weekdays, null, UnitDays.nextNumber(ofUnit), false);
    }

    private Notice notice(Unit unit, List<LocalDate> dates) {
        return Notice.of(
                "schedule.entered",
                dates.size(),
                unit.name(),
                display.date(dates.get(0)),
                display.date(dates.get(dates.size() - 1)));
    }

    private static void describe(Model model, List<Unit> all, Unit unit) {
        model.addAttribute("units", all);
        model.addAttribute("unit", unit);
        model.addAttribute("weekdays", DayOfWeek.values());
    }

    private static Unit find(List<Unit> all, UUID id) {
        return all.stream().filter(unit -> unit.id().equals(id)).findFirst().orElseThrow(NotFoundException::new);
    }
}
