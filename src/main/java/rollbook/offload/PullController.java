package rollbook.offload;

import jakarta.validation.Valid;
import java.math.BigDecimal;
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
import rollbook.quantity.ByteCount;
import rollbook.recording.RecordingFormat;
import rollbook.web.Display;
import rollbook.web.Notice;
import rollbook.web.Refusal;

/** A card comes out of its camera with something on it. */
@Controller
@RequestMapping("/p/{production}/rolls/{roll}/pull")
class PullController {
    private final Rolls rolls;
    private final RollSizes sizes;
    private final Display display;

    PullController(Rolls rolls, RollSizes sizes, Display display) {
        this.rolls = rolls;
        this.sizes = sizes;
        this.display = display;
    }

    @GetMapping
    @AllowedFor(Role.WRANGLER)
    ModelAndView show(Membership by, @PathVariable("roll") UUID rollId) {
        return view(by, inCamera(by, rollId)).addObject("pullForm", new PullForm(""));
    }

    @PostMapping
    @AllowedFor(Role.WRANGLER)
    Object pull(
            Membership by,
            @PathVariable("roll") UUID rollId,
            @Valid PullForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Roll roll = inCamera(by, rollId);
        Optional<BigDecimal> minutes = result.hasErrors() ? Optional.empty() : RecordedMinutes.parse(form.minutes());
        if (minutes.isEmpty()) {
            if (!result.hasErrors()) {
                result.rejectValue("minutes", "offload.minutes.unreadable");
            }
            ModelAndView view = view(by, roll);
            view.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return view;
        }
        rolls.pull(by, rollId, minutes.get());
        flash.addFlashAttribute(
                "notice",
                Notice.of("offload.pull.done", roll.code(), roll.cardCode(), RecordedMinutes.format(minutes.get())));
        return "redirect:" + by.path("rolls/" + rollId);
    }

    private Roll inCamera(Membership by, UUID rollId) {
        Roll roll = rolls.get(by.productionId(), rollId);
        if (roll.pulledAt() != null) {
            throw new Refusal("offload.refused.pulled-already", roll.code());
        }
        return roll;
    }

    private ModelAndView view(Membership by, Roll roll) {
        return new ModelAndView("offload/pull")
                .addObject("roll", roll)
                .addObject(
                        "sentence",
                        display.text(
                                "offload.pull.sentence",
                                roll.cardCode(),
                                roll.cameraLetter(),
                                display.when(roll.loadedAt(), by.zone())))
                .addObject("hint", hint(by, roll));
    }

    private String hint(Membership by, Roll roll) {
        RecordingFormat format = sizes.formatOf(by.productionId(), roll);
        return roll.cardCapacityBytes() == null
                ? display.text("offload.minutes.hint")
                : display.text(
                        "offload.minutes.hint.capacity",
                        roll.cardCode(),
                        display.count(format.minutesOn(ByteCount.of(roll.cardCapacityBytes()))
                                .floor()),
                        format.name());
    }
}
