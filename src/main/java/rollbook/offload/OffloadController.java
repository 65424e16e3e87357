package rollbook.offload;

import jakarta.validation.Valid;
import java.util.OptionalLong;
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

/** A session that copies a card: how it goes, and how it ended. */
@Controller
@RequestMapping("/p/{production}/offloads/{session}")
class OffloadController {
    private final SessionPages pages;
    private final Offloads offloads;
    private final Display display;

    OffloadController(SessionPages pages, Offloads offloads, Display display) {
        this.pages = pages;
        this.offloads = offloads;
        this.display = display;
    }

    @GetMapping
    ModelAndView show(Membership by, @PathVariable("session") UUID sessionId) {
        SessionPage page = pages.page(by, sessionId);
        String estimate = page.expectedBytes() == null ? "" : display.size(page.expectedBytes());
        return view(by, page).addObject("finishForm", new FinishForm(estimate));
    }

    /** Where a browser lands that loads the page of a refused form again. */
    @GetMapping("/finish")
    String backToSession(Membership by, @PathVariable("session") UUID sessionId) {
        return "redirect:" + by.path("offloads/" + sessionId);
    }

    @PostMapping("/finish")
    @AllowedFor(Role.WRANGLER)
    Object finish(
            Membership by,
            @PathVariable("session") UUID sessionId,
            @Valid FinishForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Offload offload = running(by, sessionId);
        OptionalLong bytes = result.hasErrors() ? OptionalLong.empty() : ReportedBytes.parse(form.size());
        if (bytes.isEmpty()) {
            if (!result.hasErrors()) {
                result.rejectValue("size", "offload.finish.unreadable");
            }
            ModelAndView view = view(by, pages.page(by, sessionId));
            view.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return view;
        }
        offloads.finish(by, sessionId, bytes.getAsLong());
        flash.addFlashAttribute(
                "notice", Notice.of("offload.finish.done", offload.rollCode(), display.size(bytes.getAsLong())));
        return "redirect:" + by.path("offloads/" + sessionId);
    }

    @GetMapping("/abandon")
    @AllowedFor(Role.WRANGLER)
    ModelAndView askWhy(Membership by, @PathVariable("session") UUID sessionId) {
        return abandonView(running(by, sessionId)).addObject("abandonForm", new AbandonForm(""));
    }

    @PostMapping("/abandon")
    @AllowedFor(Role.WRANGLER)
    Object abandon(
            Membership by,
            @PathVariable("session") UUID sessionId,
            @Valid AbandonForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Offload offload = running(by, sessionId);
        if (result.hasErrors()) {
            ModelAndView view = abandonView(offload);
            view.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return view;
        }
        offloads.abandon(by, sessionId, form.reason().strip());
        flash.addFlashAttribute("notice", Notice.of("offload.abandon.done", offload.rollCode(), offload.cardCode()));
        return "redirect:" + by.path("offloads/" + sessionId);
    }

    private Offload running(Membership by, UUID sessionId) {
        Offload offload = offloads.get(by.productionId(), sessionId);
        offload.requireRunning();
        return offload;
    }

    private ModelAndView view(Membership by, SessionPage page) {
        return new ModelAndView("offload/session")
                .addObject("page", page)
                .addObject("place", "rolls")
                .addObject("sentence", pages.sentence(by, page))
                .addObject("comparison", pages.comparison(page.difference()));
    }

    private ModelAndView abandonView(Offload offload) {
        return new ModelAndView("offload/abandon")
                .addObject("offload", offload)
                .addObject("place", "rolls")
                .addObject(
                        "sentence",
                        display.text("offload.abandon.sentence", offload.rollCode(), offload.destinations()));
    }
}
