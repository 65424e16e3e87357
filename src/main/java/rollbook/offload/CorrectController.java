package rollbook.offload;

import jakarta.validation.Valid;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
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
import rollbook.web.Refusal;

/** Puts right what was logged of a roll. */
@Controller
@RequestMapping("/p/{production}/rolls/{roll}/correct")
class CorrectController {
    private final Rolls rolls;
    private final RollCorrections corrections;
    private final RollSizes sizes;
    private final DayChoices days;
    private final Display display;

    CorrectController(Rolls rolls, RollCorrections corrections, RollSizes sizes, DayChoices days, Display display) {
        this.rolls = rolls;
        this.corrections = corrections;
        this.sizes = sizes;
        this.days = days;
        this.display = display;
    }

    @GetMapping
    @AllowedFor(Role.WRANGLER)
    ModelAndView show(Membership by, @PathVariable("roll") UUID rollId) {
        Roll roll = pulled(by, rollId);
        return view(by, roll).addObject("correctForm", CorrectForm.of(roll));
    }

    @PostMapping
    @AllowedFor(Role.WRANGLER)
    Object correct(
            Membership by,
            @PathVariable("roll") UUID rollId,
            @Valid CorrectForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Roll roll = pulled(by, rollId);
        Optional<BigDecimal> minutes = result.hasErrors() ? Optional.empty() : read(by, roll, form, result);
        if (result.hasErrors()) {
            ModelAndView view = view(by, roll);
            view.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return view;
        }
        String note = form.note() == null ? "" : form.note().strip();
        corrections.correct(
                by, rollId, form.code(), form.day(), form.format(), minutes.orElseThrow(), note, form.version());
        flash.addFlashAttribute(
                "notice", Notice.of("offload.correct.done", form.code().strip().toUpperCase(Locale.ROOT)));
        return "redirect:" + by.path("rolls/" + rollId);
    }

    private Optional<BigDecimal> read(Membership by, Roll roll, CorrectForm form, BindingResult result) {
        Optional<BigDecimal> minutes = RecordedMinutes.parse(form.minutes());
        if (minutes.isEmpty()) {
            result.rejectValue("minutes", "offload.minutes.unreadable");
        }
        boolean taken = rolls.findByCode(by.productionId(), form.code())
                .filter(other -> !other.id().equals(roll.id()))
                .isPresent();
        if (taken) {
            String code = form.code().strip().toUpperCase(Locale.ROOT);
            result.rejectValue("code", "offload.load.code.taken", new Object[] {code}, null);
        }
        return minutes;
    }

    private Roll pulled(Membership by, UUID rollId) {
        Roll roll = rolls.get(by.productionId(), rollId);
        if (roll.pulledAt() == null) {
            throw new Refusal("offload.refused.not-pulled", roll.code());
        }
        return roll;
    }

    private ModelAndView view(Membership by, Roll roll) {
        return new ModelAndView("offload/correct")
                .addObject("roll", roll)
                .addObject("sentence", display.text("offload.correct.sentence", roll.code()))
                .addObject("days", days.choices(days.list(by.productionId(), roll.unitId(), roll.dayId())))
                .addObject("formats", sizes.choices(by.productionId()));
    }
}
