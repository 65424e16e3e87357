package rollbook.hire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.Size;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.quantity.Money;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Notice;
import rollbook.web.Typed;

/** An agreement: its page, and its forms to write it down, extend, correct and take back. */
@Controller
@RequestMapping("/p/{production}/hire")
class AgreementController {
    private static final String ONE = "/{id:[0-9a-fA-F-]{36}}";

    private final Agreements agreements;
    private final AgreementBook book;
    private final AgreementForms forms;
    private final HirePages pages;
    private final Display display;

    AgreementController(
            Agreements agreements, AgreementBook book, AgreementForms forms, HirePages pages, Display display) {
        this.agreements = agreements;
        this.book = book;
        this.forms = forms;
        this.pages = pages;
        this.display = display;
    }

    /** @param entries how many the person has seen */
    record TakeBackForm(@Size(max = 1000) String note, int entries) {
        TakeBackForm {
            note = Typed.text(note);
        }
    }

    @GetMapping(ONE)
    ModelAndView one(Membership membership, @PathVariable UUID id) {
        return new ModelAndView("hire/one").addObject("page", pages.agreement(membership, get(membership, id)));
    }

    @GetMapping("/new")
    @AllowedFor(Role.OFFICE)
    ModelAndView blank(Membership membership, @RequestParam(required = false) @Nullable UUID item) {
        Candidates free = forms.free(membership);
        AgreementForm form = forms.blank(membership, free, item);
        return page(membership, free, form.models(), null, HttpStatus.OK).addObject("agreementForm", form);
    }

    @PostMapping("/new")
    @AllowedFor(Role.OFFICE)
    ModelAndView agree(
            Membership membership, @Valid AgreementForm form, BindingResult result, RedirectAttributes flash) {
        Candidates free = forms.free(membership);
        Money money = Money.of(membership.currency());
        form.lookFurther(money, result);
        Map<UUID, Long> rates = new ItemsReading(free, result).rates(form.items(), List.of(), form.models(), money);
        if (result.hasErrors()) {
            return page(membership, free, form.models(), null, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        UUID id = book.agree(membership, form.terms(money, rates));
        return done(membership, id, "hire.agreed", flash);
    }

    @GetMapping(ONE + "/correct")
    @AllowedFor(Role.OFFICE)
    ModelAndView correction(Membership membership, @PathVariable UUID id) {
        HireAgreement agreement = get(membership, id);
        Candidates candidates = forms.correctable(membership, agreement);
        AgreementForm form = forms.correction(membership, agreement, candidates);
        return page(membership, candidates, form.models(), agreement, HttpStatus.OK)
                .addObject("agreementForm", form);
    }

    @PostMapping(ONE + "/correct")
    @AllowedFor(Role.OFFICE)
    ModelAndView correct(
            Membership membership,
            @PathVariable UUID id,
            @Valid AgreementForm form,
            BindingResult result,
            RedirectAttributes flash) {
        HireAgreement agreement = get(membership, id);
        Candidates candidates = forms.correctable(membership, agreement);
        Money money = Money.of(membership.currency());
        form.lookFurther(money, result);
        agreement.terms().beforeNewest().ifPresent(before -> requireAfter(before, form, result));
        Map<UUID, Long> rates = new ItemsReading(candidates, result)
                .rates(form.items(), AgreementForms.ended(candidates), form.models(), money);
        if (result.hasErrors()) {
            return page(membership, candidates, form.models(), agreement, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        book.correct(membership, id, form.terms(money, rates), form.entries());
        return done(membership, id, "hire.corrected", flash);
    }

    private static void requireAfter(TermsEntry before, AgreementForm form, BindingResult result) {
        if (!result.hasErrors() && form.dueOn() != null && !form.dueOn().isAfter(before.dueOn())) {
            result.rejectValue(
                    "dueOn",
                    "hire.form.due-not-later",
                    new Object[] {before.dueOn().toString()},
                    null);
        }
    }

    @GetMapping(ONE + "/take-back")
    @AllowedFor(Role.OFFICE)
    ModelAndView takeBackForm(Membership membership, @PathVariable UUID id) {
        HireAgreement agreement = get(membership, id);
        return takeBackPage(agreement, HttpStatus.OK)
                .addObject("takeBackForm", new TakeBackForm("", agreement.entries()));
    }

    @PostMapping(ONE + "/take-back")
    @AllowedFor(Role.OFFICE)
    ModelAndView takeBack(
            Membership membership,
            @PathVariable UUID id,
            @Valid TakeBackForm form,
            BindingResult result,
            RedirectAttributes flash) {
        HireAgreement agreement = get(membership, id);
        if (result.hasErrors()) {
            return takeBackPage(agreement, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        book.takeBack(membership, id, form.note(), form.entries());
        return done(membership, id, "hire.taken-back", flash);
    }

    private ModelAndView takeBackPage(HireAgreement agreement, HttpStatus status) {
        TermsHistory terms = agreement.terms();
        String sentence = terms.extensions() == 0
                ? display.text("hire.take-back.sentence")
                : display.text(
                        "hire.take-back.sentence.extension",
                        display.date(terms.newest().dueOn()));
        return new ModelAndView("hire/take-back", status)
                .addObject("agreement", agreement)
                .addObject("sentence", sentence);
    }

    private HireAgreement get(Membership membership, UUID id) {
        return agreements.get(membership.productionId(), id);
    }

    private ModelAndView page(
            Membership membership,
            Candidates candidates,
            List<ModelForm> models,
            @Nullable HireAgreement kept,
            HttpStatus status) {
        return new ModelAndView("hire/edit", status)
                .addObject("kept", kept)
                .addObject("candidates", candidates)
                .addObject("models", candidates.inOrderOf(models))
                .addObject(
                        "suppliers",
                        forms.suppliers(membership).stream()
                                .map(supplier -> new Choice(supplier.id().toString(), supplier.name()))
                                .toList());
    }

    private ModelAndView done(Membership membership, UUID id, String key, RedirectAttributes flash) {
        flash.addFlashAttribute("notice", Notice.of(key, get(membership, id).code()));
        return new ModelAndView("redirect:" + membership.path("hire/" + id));
    }
}
