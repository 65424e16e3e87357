package rollbook.production;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.Size;
import java.time.DayOfWeek;
import java.time.ZoneId;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** A production's name, time zone and currency, and the weekdays on which suppliers work. */
@Controller
@RequestMapping("/p/{production}/settings")
class ProductionController {
    private final Productions productions;

    ProductionController(Productions productions) {
        this.productions = productions;
    }

    @AllowedFor({})
    @GetMapping("/production")
    ModelAndView form(Membership membership) {
        Production now = productions.get(membership.productionId());
        return page(HttpStatus.OK)
                .addObject(
                        "productionForm",
                        new ProductionForm(now.name(), now.zone().getId(), now.currency(), now.version()));
    }

    @AllowedFor({})
    @PostMapping("/production")
    ModelAndView change(
            Membership membership, @Valid ProductionForm form, BindingResult result, RedirectAttributes flash) {
        Zones.check(form.zone(), result);
        Currencies.check(form.currency(), result);
        if (result.hasErrors()) {
            return page(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        Production now = productions.get(membership.productionId());
        productions.change(
                membership,
                new Production(
                        now.id(),
                        now.code(),
                        form.name(),
                        ZoneId.of(form.zone()),
                        form.currency(),
                        now.workingDays(),
                        now.virusChecked(),
                        now.writeBlocked(),
                        form.version()));
        return saved(membership, flash);
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/working-days")
    ModelAndView workingDays(Membership membership) {
        Production now = productions.get(membership.productionId());
        return workingDaysPage(HttpStatus.OK)
                .addObject("workingDaysForm", new WorkingDaysForm(now.workingDays(), now.version()));
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/working-days")
    ModelAndView changeWorkingDays(
            Membership membership, @Valid WorkingDaysForm form, BindingResult result, RedirectAttributes flash) {
        if (result.hasErrors()) {
            return workingDaysPage(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        Production now = productions.get(membership.productionId());
        productions.change(
                membership,
                new Production(
                        now.id(),
                        now.code(),
                        now.name(),
                        now.zone(),
                        now.currency(),
                        form.workingDays(),
                        now.virusChecked(),
                        now.writeBlocked(),
                        form.version()));
        return saved(membership, flash);
    }

    @AllowedFor({})
    @GetMapping("/practice")
    ModelAndView practice(Membership membership) {
        Production now = productions.get(membership.productionId());
        return new ModelAndView("production/practice")
                .addObject("practiceForm", new PracticeForm(now.virusChecked(), now.writeBlocked(), now.version()));
    }

    @AllowedFor({})
    @PostMapping("/practice")
    ModelAndView changePractice(
            Membership membership, @Valid PracticeForm form, BindingResult result, RedirectAttributes flash) {
        if (result.hasErrors()) {
            return new ModelAndView("production/practice", HttpStatus.UNPROCESSABLE_CONTENT);
        }
        Production now = productions.get(membership.productionId());
        productions.change(
                membership,
                new Production(
                        now.id(),
                        now.code(),
                        now.name(),
                        now.zone(),
                        now.currency(),
                        now.workingDays(),
                        form.virusChecked(),
                        form.writeBlocked(),
                        form.version()));
        return saved(membership, flash);
    }

    private static ModelAndView saved(Membership membership, RedirectAttributes flash) {
        flash.addFlashAttribute("notice", Notice.of("production.production.saved"));
        return new ModelAndView("redirect:" + membership.path("settings"));
    }

    private static ModelAndView page(HttpStatus status) {
        return new ModelAndView("production/production", status).addObject("zones", Zones.choices());
    }

    private static ModelAndView workingDaysPage(HttpStatus status) {
        return new ModelAndView("production/working-days", status).addObject("weekdays", DayOfWeek.values());
    }

    record ProductionForm(@NotBlank @Size(max = 100) String name, String zone, String currency, int version) {
        ProductionForm {
            name = Typed.text(name);
            currency = Typed.code(currency);
        }
    }

    record PracticeForm(boolean virusChecked, boolean writeBlocked, int version) {}

    record WorkingDaysForm(@NotEmpty Set<DayOfWeek> workingDays, int version) {
        WorkingDaysForm(@Nullable Set<DayOfWeek> workingDays, int version) {
            this.workingDays = workingDays == null ? Set.of() : workingDays;
            this.version = version;
        }
    }
}
