package rollbook.demo;

import jakarta.validation.Valid;
import java.time.Clock;
import org.springframework.context.annotation.Profile;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;
import rollbook.web.Refusal;

/**
 * The living page: what all pages are made of, in each of its states, drawn from examples by the fragments themselves, so
 * that a change of one is seen at once. Nothing that is sent here is kept.
 */
@Controller
@Profile("demo")
@RequestMapping("/p/{production}/components")
class ComponentsController {
    private static final String PAGE = "demo/components";

    private final Clock clock;
    private final Display display;

    ComponentsController(Clock clock, Display display) {
        this.clock = clock;
        this.display = display;
    }

    @ModelAttribute
    void examples(Membership membership, Model model) {
        model.addAttribute("examples", Examples.at(clock.instant(), membership, display));
    }

    @GetMapping
    String show(Model model) {
        model.addAttribute("exampleForm", ExampleForm.filledIn());
        return PAGE;
    }

    @PostMapping
    @AllowedFor({Role.WRANGLER, Role.OFFICE, Role.POST, Role.READER})
    ModelAndView check(Membership membership, @Valid ExampleForm form, BindingResult wrong, RedirectAttributes flash) {
        if (wrong.hasErrors()) {
            return new ModelAndView(PAGE, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        flash.addFlashAttribute("notice", Notice.of("demo.components.checked", form.code()));
        return new ModelAndView("redirect:" + membership.path("components"));
    }

    /** The form with whatever the address says, so that a wrong one can be linked to. */
    @GetMapping("/wrong-form")
    ModelAndView wrongForm(@Valid ExampleForm form, BindingResult wrong) {
        return new ModelAndView(PAGE, wrong.hasErrors() ? HttpStatus.UNPROCESSABLE_CONTENT : HttpStatus.OK);
    }

    /** The pages that say that something went wrong, by their status. */
    @GetMapping("/status/{status:\\d+}")
    void fail(@PathVariable int status) {
        throw switch (status) {
            case 403 -> new AccessDeniedException("the living page asked");
            case 409 -> new Refusal("demo.components.refused", "CARD-014", "A014");
            case 413 -> new ResponseStatusException(HttpStatus.CONTENT_TOO_LARGE);
            case 500 -> new IllegalStateException("the living page asked");
            default -> new NotFoundException();
        };
    }
}
