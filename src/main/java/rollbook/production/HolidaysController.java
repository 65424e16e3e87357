package rollbook.production;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.web.Display;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** The days on which suppliers and couriers don't work although the weekday is a working one. */
@Controller
@RequestMapping("/p/{production}/settings/holidays")
class HolidaysController {
    private final Productions productions;
    private final Display display;

    HolidaysController(Productions productions, Display display) {
        this.productions = productions;
        this.display = display;
    }

    @AllowedFor(Role.OFFICE)
    @GetMapping("/new")
    ModelAndView form(Membership membership) {
        return page(HttpStatus.OK).addObject("holidayForm", new HolidayForm(null, ""));
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/new")
    ModelAndView add(Membership membership, @Valid HolidayForm form, BindingResult result, RedirectAttributes flash) {
        LocalDate date = form.date();
        if (result.hasErrors() || date == null) {
            return page(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        productions.addHoliday(membership, date, form.name());
        return done(membership, flash, "production.holiday.saved", date);
    }

    @AllowedFor(Role.OFFICE)
    @PostMapping("/{date}/remove")
    ModelAndView remove(Membership membership, @PathVariable LocalDate date, RedirectAttributes flash) {
        productions.removeHoliday(membership, date);
        return done(membership, flash, "production.holiday.removed", date);
    }

    private ModelAndView done(Membership membership, RedirectAttributes flash, String key, LocalDate date) {
        flash.addFlashAttribute("notice", Notice.of(key, display.date(date)));
        return new ModelAndView("redirect:" + membership.path("settings"));
    }

    private static ModelAndView page(HttpStatus status) {
        return new ModelAndView("production/holiday", status);
    }

    record HolidayForm(
            @NotNull @Nullable LocalDate date,
            @NotBlank @Size(max = 100) String name) {
        HolidayForm {
            name = Typed.text(name);
        }
    }
}
