package rollbook.schedule;

import jakarta.validation.Valid;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
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
import rollbook.format.NamedFormat;
import rollbook.format.RecordingFormats;
import rollbook.production.AllowedFor;
import rollbook.production.Camera;
import rollbook.production.CameraUnits;
import rollbook.production.Membership;
import rollbook.production.Productions;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.Notice;

/** A day's page and the steps that a day takes. */
@Controller
@RequestMapping("/p/{production}/days/{id}")
class DayPageController {
    private final ShootingDays days;
    private final DayStates states;
    private final CameraUnits units;
    private final RecordingFormats formats;
    private final Productions productions;
    private final DayBars bars;
    private final BarsPictures pictures;
    private final Display display;
    private final Clock clock;

    DayPageController(
            ShootingDays days,
            DayStates states,
            CameraUnits units,
            RecordingFormats formats,
            Productions productions,
            DayBars bars,
            BarsPictures pictures,
            Display display,
            Clock clock) {
        this.days = days;
        this.states = states;
        this.units = units;
        this.formats = formats;
        this.productions = productions;
        this.bars = bars;
        this.pictures = pictures;
        this.display = display;
        this.clock = clock;
    }

    @GetMapping
    String day(Membership membership, @PathVariable UUID id, Model model) {
        describe(membership, id, model);
        model.addAttribute("reopenForm", new ReopenForm(""));
        return "schedule/day";
    }

    @PostMapping("/start")
    @AllowedFor({Role.OFFICE, Role.WRANGLER})
    String start(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        states.start(membership, id);
        return back(membership, id, Notice.of("schedule.day.started", number(membership, id)), flash);
    }

    @PostMapping("/wrap")
    @AllowedFor({Role.OFFICE, Role.WRANGLER})
    String wrap(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        states.wrap(membership, id);
        return back(membership, id, Notice.of("schedule.day.wrapped", number(membership, id)), flash);
    }

    @PostMapping("/stop")
    @AllowedFor(Role.OFFICE)
    String stop(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        states.stop(membership, id);
        return back(membership, id, Notice.of("schedule.day.stopped", number(membership, id)), flash);
    }

    @PostMapping("/cancel")
    @AllowedFor(Role.OFFICE)
    String cancel(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        states.cancel(membership, id);
        return back(membership, id, Notice.of("schedule.day.cancelled", number(membership, id)), flash);
    }

    @PostMapping("/restore")
    @AllowedFor(Role.OFFICE)
    String restore(Membership membership, @PathVariable UUID id, RedirectAttributes flash) {
        states.restore(membership, id);
        return back(membership, id, Notice.of("schedule.day.restored", number(membership, id)), flash);
    }

    @PostMapping("/reopen")
    @AllowedFor(Role.OFFICE)
    ModelAndView reopen(
            Membership membership,
            @PathVariable UUID id,
            @Valid @ModelAttribute ReopenForm reopenForm,
            BindingResult errors,
            Model model,
            RedirectAttributes flash) {
        if (errors.hasErrors()) {
            describe(membership, id, model);
            return new ModelAndView("schedule/day", model.asMap(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        states.reopen(membership, id, reopenForm.reason().strip());
        return new ModelAndView(
                back(membership, id, Notice.of("schedule.day.reopened", number(membership, id)), flash));
    }

    private void describe(Membership membership, UUID id, Model model) {
        UUID production = membership.productionId();
        ShootingDay day = days.get(production, id);
        Map<UUID, NamedFormat> byId = formats.byId(production);
        Map<UUID, Camera> cameras =
                units.cameras(production).stream().collect(Collectors.toMap(Camera::id, camera -> camera));
        List<Line> lines = days.plannedMinutes(production, id).stream()
                .map(plan -> {
                    NamedFormat format = byId.get(plan.formatId());
                    String letter = cameras.get(plan.cameraId()).letter();
                    return new Line(letter, format.id(), format.name(), DayTotals.of(plan.minutes(), format));
                })
                .toList();
        DayTotals total = lines.stream().map(Line::totals).reduce(DayTotals.NONE, DayTotals::plus);
        model.addAttribute("day", day);
        model.addAttribute("lines", lines);
        model.addAttribute("total", total);
        model.addAttribute("holiday", productions.holidays(production).get(day.date()));
        model.addAttribute("sentence", sentence(day, total));
        if (day.state() != DayState.CANCELLED) {
            UnitBars.Day bytes = bars.of(
                            production,
                            List.of(day),
                            Map.of(id, total),
                            byId,
                            LocalDate.now(clock.withZone(membership.zone())))
                    .get(day.unitId())
                    .days()
                    .get(0);
            model.addAttribute("bar", DayBar.of(bytes));
            model.addAttribute("barSays", pictures.sentence(bytes));
        }
    }

    private String sentence(ShootingDay day, DayTotals total) {
        String key = "schedule.day.sentence." + day.state();
        String plan = total.minutes().signum() == 0
                ? display.text("schedule.day.no-plan")
                : display.text("schedule.day.plan", total.minutesText(), display.amount(total.bytes()));
        return display.text(key, day.unitName(), display.date(day.date())) + " " + plan;
    }

    private int number(Membership membership, UUID id) {
        return days.get(membership.productionId(), id).number();
    }

    private static String back(Membership membership, UUID id, Notice notice, RedirectAttributes flash) {
        flash.addFlashAttribute("notice", notice);
        return "redirect:" + membership.path("days/" + id);
    }

    record Line(String camera, UUID formatId, String format, DayTotals totals) {}
}
