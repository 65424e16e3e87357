package rollbook.offload;

import jakarta.validation.Valid;
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

/** Begins to copy a card. */
@Controller
@RequestMapping("/p/{production}/rolls/{roll}/offload")
class StartController {
    private final StartPages pages;
    private final Rolls rolls;
    private final Offloads offloads;
    private final Display display;

    StartController(StartPages pages, Rolls rolls, Offloads offloads, Display display) {
        this.pages = pages;
        this.rolls = rolls;
        this.offloads = offloads;
        this.display = display;
    }

    @GetMapping
    @AllowedFor(Role.WRANGLER)
    ModelAndView show(Membership by, @PathVariable("roll") UUID rollId) {
        StartPage page = page(by, rollId);
        return view(page).addObject("startForm", page.proposal());
    }

    @PostMapping
    @AllowedFor(Role.WRANGLER)
    Object start(
            Membership by,
            @PathVariable("roll") UUID rollId,
            @Valid StartForm form,
            BindingResult result,
            RedirectAttributes flash) {
        StartPage page = page(by, rollId);
        check(form, page, result);
        if (result.hasErrors()) {
            ModelAndView view = view(page);
            view.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return view;
        }
        UUID session = offloads.start(by, rollId, form.reader(), form.adapter(), form.destinations());
        flash.addFlashAttribute(
                "notice",
                Notice.of("offload.start.done", page.roll().code(), page.roll().cardCode()));
        return "redirect:" + by.path("offloads/" + session);
    }

    private static void check(StartForm form, StartPage page, BindingResult result) {
        if (form == null) {
            return;
        }
        if (!form.legs().stream().map(StartForm.LegForm::leg).toList().equals(page.legIds())) {
            throw new Refusal("offload.refused.plan-changed", page.roll().code());
        }
        form.repeated().forEach(field -> result.rejectValue(field, "offload.start.repeated"));
        if (form.destinations().isEmpty()) {
            result.rejectValue(form.legs().isEmpty() ? "extra" : "legs[0].item", "offload.start.nowhere");
        }
    }

    private StartPage page(Membership by, UUID rollId) {
        Roll roll = rolls.get(by.productionId(), rollId);
        Offloads.requireReadable(roll);
        return pages.page(by, roll);
    }

    private ModelAndView view(StartPage page) {
        Roll roll = page.roll();
        String sentence = page.expectedBytes() == null
                ? display.text("offload.start.sentence.unknown", roll.cardCode(), roll.code())
                : display.text(
                        roll.sizeBytes() == null ? "offload.start.sentence.estimated" : "offload.start.sentence.known",
                        roll.cardCode(),
                        roll.code(),
                        display.amount(page.expectedBytes()));
        return new ModelAndView("offload/start").addObject("page", page).addObject("sentence", sentence);
    }
}
