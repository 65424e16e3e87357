package rollbook.hire;

import jakarta.validation.Valid;
import java.util.List;
import java.util.Map;
import java.util.Objects;
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
import rollbook.quantity.Money;
import rollbook.web.Display;
import rollbook.web.Notice;

/** Keeping hired items longer than was agreed. */
@Controller
@RequestMapping("/p/{production}/hire/{id:[0-9a-fA-F-]{36}}/extend")
class ExtensionController {
    private static final int MOST_YEARS = 10;

    private final Agreements agreements;
    private final AgreementBook book;
    private final AgreementForms forms;
    private final Display display;

    ExtensionController(Agreements agreements, AgreementBook book, AgreementForms forms, Display display) {
        this.agreements = agreements;
        this.book = book;
        this.forms = forms;
        this.display = display;
    }

    @GetMapping
    @AllowedFor(Role.OFFICE)
    ModelAndView form(Membership membership, @PathVariable UUID id) {
        HireAgreement agreement = agreements.get(membership.productionId(), id);
        Candidates candidates = forms.extendable(membership, agreement);
        ExtensionForm form = forms.extension(membership, agreement, candidates);
        return page(agreement, candidates, form.models(), HttpStatus.OK).addObject("extensionForm", form);
    }

    @PostMapping
    @AllowedFor(Role.OFFICE)
    ModelAndView extend(
            Membership membership,
            @PathVariable UUID id,
            @Valid ExtensionForm form,
            BindingResult result,
            RedirectAttributes flash) {
        HireAgreement agreement = agreements.get(membership.productionId(), id);
        Candidates candidates = forms.extendable(membership, agreement);
        requireLater(agreement, candidates, form, result);
        Money money = Money.of(membership.currency());
        Map<UUID, Long> rates =
                new ItemsReading(candidates, result).rates(form.items(), List.of(), form.models(), money);
        if (result.hasErrors()) {
            return page(agreement, candidates, form.models(), HttpStatus.UNPROCESSABLE_CONTENT);
        }
        book.extend(membership, id, Objects.requireNonNull(form.dueOn()), rates, form.note(), form.entries());
        flash.addFlashAttribute("notice", Notice.of("hire.extended", agreement.code()));
        return new ModelAndView("redirect:" + membership.path("hire/" + id));
    }

    private static void requireLater(
            HireAgreement agreement, Candidates candidates, ExtensionForm form, BindingResult result) {
        if (result.hasErrors() || form.dueOn() == null) {
            return;
        }
        new ItemsReading(candidates, result)
                .named("items", form.items()).stream()
                        .map(Hired::dueOn)
                        .filter(Objects::nonNull)
                        .filter(due -> !form.dueOn().isAfter(due))
                        .findFirst()
                        .ifPresent(due -> result.rejectValue(
                                "dueOn", "hire.form.due-not-later", new Object[] {due.toString()}, null));
        if (form.dueOn().isAfter(agreement.terms().newest().startedOn().plusYears(MOST_YEARS))) {
            result.rejectValue("dueOn", "hire.form.due-too-far");
        }
    }

    private ModelAndView page(
            HireAgreement agreement, Candidates candidates, List<ModelForm> models, HttpStatus status) {
        return new ModelAndView("hire/extend", status)
                .addObject("kept", agreement)
                .addObject(
                        "sentence",
                        display.text(
                                "hire.extend.sentence",
                                display.date(agreement.terms().newest().dueOn())))
                .addObject("candidates", candidates)
                .addObject("models", candidates.inOrderOf(models));
    }
}
