package rollbook.hire;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
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
import rollbook.inventory.Custody;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;
import rollbook.web.Refusal;
import rollbook.web.Typed;

/** The way back of hired items: several at once, each code typed or scanned as the item is handed over. */
@Controller
@RequestMapping("/p/{production}")
class ReturnController {
    private static final String CODES = "codes";
    private static final String DATE = "returnedOn";

    private final Hires hires;
    private final HirePages pages;
    private final ReturnPages returns;
    private final AgreementBook book;
    private final HireEnds ends;
    private final Custody custody;
    private final Display display;

    ReturnController(
            Hires hires,
            HirePages pages,
            ReturnPages returns,
            AgreementBook book,
            HireEnds ends,
            Custody custody,
            Display display) {
        this.hires = hires;
        this.pages = pages;
        this.returns = returns;
        this.book = book;
        this.ends = ends;
        this.custody = custody;
        this.display = display;
    }

    /** @param codes of what goes back, runs of them too */
    record ReturnForm(
            @NotBlank @Size(max = 4000) String codes,
            @NotNull @Nullable LocalDate returnedOn,
            @Size(max = 500) String note) {
        ReturnForm {
            codes = Typed.text(codes);
            note = Typed.text(note);
        }
    }

    /** @param entries about the item's end that the person has seen */
    record EndForm(
            @NotNull @Nullable LocalDate returnedOn,
            @Size(max = 500) String note,
            int entries) {
        EndForm {
            note = Typed.text(note);
        }
    }

    /** The item's page leads here. */
    @GetMapping("/media/{id:[0-9a-fA-F-]{36}}/return")
    @AllowedFor(Role.OFFICE)
    String ofItem(Membership membership, @PathVariable UUID id) {
        return "redirect:" + membership.path("hire/return?item=" + id);
    }

    /** @param agreement of which the items are shown; or else the one item; or else all that is hired */
    @GetMapping("/hire/return")
    @AllowedFor(Role.OFFICE)
    ModelAndView form(
            Membership membership,
            @RequestParam(required = false) @Nullable UUID agreement,
            @RequestParam(required = false) @Nullable UUID item) {
        List<Hired> shown = shown(membership, agreement, item);
        return page(membership, shown, HttpStatus.OK)
                .addObject("returnForm", new ReturnForm("", pages.today(membership), ""));
    }

    @PostMapping("/hire/return")
    @AllowedFor(Role.OFFICE)
    ModelAndView giveBack(
            Membership membership,
            @RequestParam(required = false) @Nullable UUID agreement,
            @RequestParam(required = false) @Nullable UUID item,
            @Valid ReturnForm form,
            BindingResult result,
            RedirectAttributes flash) {
        List<Hired> shown = shown(membership, agreement, item);
        List<Hired> here = here(membership);
        List<Hired> named = result.hasErrors()
                ? List.of()
                : new ItemsReading(new Candidates(here), result).named(CODES, form.codes());
        requireDate(form.returnedOn(), named, pages.today(membership), result);
        if (!result.hasErrors() && giveBack(membership, named, form, result)) {
            flash.addFlashAttribute(
                    "notice",
                    Notice.of("hire.returned", named.size(), named.get(0).item().code()));
            return new ModelAndView("redirect:" + membership.path("hire"));
        }
        return page(membership, shown, HttpStatus.UNPROCESSABLE_CONTENT);
    }

    /** Whether all went back; or else why not is said beside the codes, and none went. */
    private boolean giveBack(Membership by, List<Hired> named, ReturnForm form, BindingResult result) {
        try {
            custody.giveBackAll(
                    by,
                    named.stream().map(hired -> hired.item().id()).toList(),
                    Objects.requireNonNull(form.returnedOn()),
                    form.note());
            return true;
        } catch (Refusal refusal) {
            String next = display.next(refusal);
            String text = display.text(refusal) + (next == null ? "" : " " + next);
            result.rejectValue(
                    CODES,
                    "refused",
                    new Object[0],
                    named.size() > 1 ? text + " " + display.text("hire.return.none-went") : text);
            return false;
        }
    }

    @GetMapping("/hire/returned/{id:[0-9a-fA-F-]{36}}")
    @AllowedFor(Role.OFFICE)
    ModelAndView end(Membership membership, @PathVariable UUID id) {
        Hired hired = ended(membership, id);
        HireEnd end = Objects.requireNonNull(hired.end());
        return endPage(membership, hired, HttpStatus.OK)
                .addObject("endForm", new EndForm(end.endedOn(), "", end.number()));
    }

    @PostMapping("/hire/returned/{id:[0-9a-fA-F-]{36}}")
    @AllowedFor(Role.OFFICE)
    ModelAndView correctEnd(
            Membership membership,
            @PathVariable UUID id,
            @Valid EndForm form,
            BindingResult result,
            RedirectAttributes flash) {
        Hired hired = ended(membership, id);
        requireDate(form.returnedOn(), List.of(hired), pages.today(membership), result);
        if (result.hasErrors()) {
            return endPage(membership, hired, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        book.correctEnd(membership, id, Objects.requireNonNull(form.returnedOn()), form.note(), form.entries());
        flash.addFlashAttribute(
                "notice", Notice.of("hire.end-corrected", hired.item().code()));
        return new ModelAndView("redirect:" + membership.path("hire"));
    }

    private void requireDate(@Nullable LocalDate date, List<Hired> items, LocalDate today, BindingResult result) {
        if (date == null || result.hasErrors()) {
            return;
        }
        if (date.isAfter(today)) {
            result.rejectValue(DATE, "hire.form.future");
        }
        items.stream()
                .filter(hired -> date.isBefore(hired.startedOn()))
                .findFirst()
                .ifPresent(hired -> result.rejectValue(
                        DATE,
                        "hire.form.before-start",
                        new Object[] {hired.item().code(), display.date(hired.startedOn())},
                        null));
    }

    private List<Hired> here(Membership membership) {
        return hires.all(membership.productionId(), membership.zone()).stream()
                .filter(Hired::isHere)
                .toList();
    }

    private List<Hired> shown(Membership membership, @Nullable UUID agreement, @Nullable UUID item) {
        List<Hired> shown = here(membership).stream()
                .filter(hired ->
                        agreement == null || agreement.equals(hired.item().agreementId()))
                .filter(hired -> item == null || item.equals(hired.item().id()))
                .toList();
        if (shown.isEmpty() && (agreement != null || item != null)) {
            throw new NotFoundException();
        }
        return shown;
    }

    private Hired ended(Membership membership, UUID itemId) {
        Hired hired = hires.get(membership.productionId(), membership.zone(), itemId);
        if (hired.end() == null) {
            throw new NotFoundException();
        }
        return hired;
    }

    private ModelAndView page(Membership membership, List<Hired> shown, HttpStatus status) {
        return new ModelAndView("hire/return", status).addObject("page", returns.page(membership, shown));
    }

    private ModelAndView endPage(Membership membership, Hired hired, HttpStatus status) {
        return new ModelAndView("hire/returned", status)
                .addObject("hired", hired)
                .addObject(
                        "sentence",
                        display.text(
                                "hire.end.sentence",
                                display.date(Objects.requireNonNull(hired.end()).endedOn())))
                .addObject(
                        "history",
                        returns.history(
                                membership,
                                ends.history(
                                        membership.productionId(), hired.item().id())));
    }
}
