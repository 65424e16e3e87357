package rollbook.offload;

import java.util.List;
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

/**
 * Takes back a loading that was logged by mistake. The card then counts as blank, so that it may be recorded over: the page
 * says that nothing proves it.
 */
@Controller
@RequestMapping("/p/{production}/rolls/{roll}/unload")
class UnloadController {
    private final Rolls rolls;
    private final Display display;

    UnloadController(Rolls rolls, Display display) {
        this.rolls = rolls;
        this.display = display;
    }

    @GetMapping
    @AllowedFor(Role.WRANGLER)
    ModelAndView show(Membership by, @PathVariable("roll") UUID rollId) {
        return view(inCamera(by, rollId)).addObject("unloadForm", new UnloadForm(""));
    }

    @PostMapping
    @AllowedFor(Role.WRANGLER)
    Object unload(
            Membership by,
            @PathVariable("roll") UUID rollId,
            UnloadForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Roll roll = inCamera(by, rollId);
        if (!form.names(roll)) {
            result.rejectValue("typed", "offload.unload.mistyped", new Object[] {roll.cardCode()}, null);
            ModelAndView view = view(roll);
            view.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return view;
        }
        rolls.unload(by, rollId);
        flash.addFlashAttribute("notice", Notice.of("offload.unload.done", roll.code(), roll.cardCode()));
        return "redirect:" + by.path("rolls");
    }

    private Roll inCamera(Membership by, UUID rollId) {
        Roll roll = rolls.get(by.productionId(), rollId);
        if (roll.pulledAt() != null) {
            throw new Refusal("offload.refused.pulled-already", roll.code());
        }
        return roll;
    }

    private ModelAndView view(Roll roll) {
        return new ModelAndView("offload/unload")
                .addObject("roll", roll)
                .addObject("sentence", display.text("offload.unload.sentence", roll.code(), roll.cardCode()))
                .addObject("proven", List.of())
                .addObject("unproven", List.of(display.text("offload.unload.unproven", roll.cardCode())));
    }
}
