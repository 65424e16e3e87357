package rollbook.production;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.time.ZoneId;
import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.people.SignedInPerson;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** The productions of the signed-in person, and making another one. */
@Controller
class ProductionsController {
    private final Memberships memberships;
    private final Productions productions;

    ProductionsController(Memberships memberships, Productions productions) {
        this.memberships = memberships;
        this.productions = productions;
    }

    /** The front page: straight to the only production, if it is the only one. */
    @GetMapping("/")
    ModelAndView front(@AuthenticationPrincipal SignedInPerson person) {
        List<Memberships.OwnProduction> own = memberships.productionsOf(person.id());
        return own.size() == 1
                ? new ModelAndView(
                        "redirect:/p/{code}/today", "code", own.get(0).code())
                : list(person, own);
    }

    @GetMapping("/productions")
    ModelAndView all(@AuthenticationPrincipal SignedInPerson person) {
        return list(person, memberships.productionsOf(person.id()));
    }

    private ModelAndView list(SignedInPerson person, List<Memberships.OwnProduction> own) {
        return new ModelAndView("production/productions")
                .addObject("person", person)
                .addObject("productions", own)
                .addObject("mayCreate", memberships.administersAny(person.id()));
    }

    @GetMapping("/productions/new")
    ModelAndView form(@AuthenticationPrincipal SignedInPerson person) {
        requireAdministrator(person);
        return page(HttpStatus.OK).addObject("newProductionForm", new NewProductionForm("", "", Zones.guess(), "EUR"));
    }

    @PostMapping("/productions/new")
    ModelAndView create(
            @AuthenticationPrincipal SignedInPerson person,
            @Valid NewProductionForm form,
            BindingResult result,
            RedirectAttributes flash) {
        requireAdministrator(person);
        Zones.check(form.zone(), result);
        Currencies.check(form.currency(), result);
        boolean saved = Typed.save(
                result,
                "code",
                "production.refused.code-taken",
                () -> productions.create(
                        form.code(),
                        form.name(),
                        ZoneId.of(form.zone()),
                        form.currency(),
                        person.id(),
                        person.displayName()));
        if (!saved) {
            return page(HttpStatus.UNPROCESSABLE_CONTENT);
        }
        flash.addFlashAttribute("notice", Notice.of("production.new.saved", form.code()));
        return new ModelAndView("redirect:/p/" + form.code() + "/settings");
    }

    private void requireAdministrator(SignedInPerson person) {
        if (!memberships.administersAny(person.id())) {
            throw new AccessDeniedException("only administrators make productions");
        }
    }

    private static ModelAndView page(HttpStatus status) {
        return new ModelAndView("production/new-production", status).addObject("zones", Zones.choices());
    }

    record NewProductionForm(
            @NotBlank @Pattern(regexp = Production.CODE) String code,
            @NotBlank @Size(max = 100) String name,
            String zone,
            String currency) {
        NewProductionForm {
            code = Typed.code(code);
            name = Typed.text(name);
            currency = Typed.code(currency);
        }
    }
}
