package rollbook.inventory;

import static org.springframework.http.HttpStatus.UNPROCESSABLE_CONTENT;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Places;
import rollbook.production.Role;
import rollbook.web.Choice;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;

/** A page for each act on an item: move, quarantine, release, lost, found; and for those who keep the books retire. */
@Controller
@RequestMapping("/p/{production}/media/{id:[0-9a-fA-F-]{36}}")
class CustodyController {
    private static final String DAILY = "/{act:move|quarantine|release|lost|found}";
    private static final String FOR_GOOD = "/retire";

    private final MediaItems items;
    private final Custody custody;
    private final Places places;
    private final ItemFormPage page;

    CustodyController(MediaItems items, Custody custody, Places places, ItemFormPage page) {
        this.items = items;
        this.custody = custody;
        this.places = places;
        this.page = page;
    }

    @GetMapping(DAILY)
    @AllowedFor({Role.WRANGLER, Role.OFFICE})
    String form(Membership membership, @PathVariable UUID id, @PathVariable String act, Model model) {
        return ask(membership, id, act, model);
    }

    @GetMapping(FOR_GOOD)
    @AllowedFor(Role.OFFICE)
    String formForGood(Membership membership, @PathVariable UUID id, Model model) {
        return ask(membership, id, CustodyAct.RETIRED.path(), model);
    }

    private String ask(Membership membership, UUID id, String act, Model model) {
        MediaItem item = items.get(membership.productionId(), id);
        model.addAttribute("custodyForm", CustodyForm.of(item));
        return page(membership, item, act(act), model);
    }

    @PostMapping(DAILY)
    @AllowedFor({Role.WRANGLER, Role.OFFICE})
    String enter(
            Membership membership,
            @PathVariable UUID id,
            @PathVariable String act,
            @ModelAttribute CustodyForm form,
            BindingResult result,
            Model model,
            HttpServletResponse response,
            RedirectAttributes flash) {
        return answer(membership, id, act(act), form, result, model, response, flash);
    }

    @PostMapping(FOR_GOOD)
    @AllowedFor(Role.OFFICE)
    String enterForGood(
            Membership membership,
            @PathVariable UUID id,
            @ModelAttribute CustodyForm form,
            BindingResult result,
            Model model,
            HttpServletResponse response,
            RedirectAttributes flash) {
        return answer(membership, id, CustodyAct.RETIRED, form, result, model, response, flash);
    }

    private String answer(
            Membership membership,
            UUID id,
            CustodyAct act,
            CustodyForm form,
            BindingResult result,
            Model model,
            HttpServletResponse response,
            RedirectAttributes flash) {
        MediaItem item = items.get(membership.productionId(), id);
        check(act, item, form, result);
        if (result.hasErrors()) {
            response.setStatus(UNPROCESSABLE_CONTENT.value());
            return page(membership, item, act, model);
        }
        enter(membership, id, act, form);
        flash.addFlashAttribute("notice", Notice.of("inventory.done." + act, item.code()));
        return "redirect:" + membership.path("media/" + id);
    }

    private void enter(Membership by, UUID id, CustodyAct act, CustodyForm form) {
        String reason = form.reasonText();
        switch (act) {
            case MOVED -> custody.move(by, id, place(form), form.holderText(), reason, version(form));
            case FOUND -> custody.reportFound(by, id, place(form), form.holderText(), reason);
            case QUARANTINED -> custody.quarantine(by, id, reason);
            case RELEASED -> custody.release(by, id, reason);
            case LOST -> custody.reportLost(by, id, reason);
            case RETIRED -> custody.retire(by, id, reason);
            case RETURNED, REGISTERED -> throw new NotFoundException();
        }
    }

    private void check(CustodyAct act, MediaItem item, CustodyForm form, BindingResult result) {
        page.check(act, form, result);
        if (act.isForGood() && !form.repeats(item.code())) {
            page.reject(result, "typed", "inventory.problem.code-typed", List.of(item.code()));
        }
    }

    private String page(Membership membership, MediaItem item, CustodyAct act, Model model) {
        model.addAttribute("item", item);
        model.addAttribute("act", act);
        if (act.moves()) {
            model.addAttribute(
                    "places",
                    places.list(membership.productionId()).stream()
                            .map(place -> new Choice(place.id().toString(), place.name()))
                            .toList());
        }
        return "inventory/act";
    }

    private static CustodyAct act(String path) {
        return CustodyAct.ofPath(path).orElseThrow(NotFoundException::new);
    }

    private static UUID place(CustodyForm form) {
        return Objects.requireNonNull(form.placeId());
    }

    private static int version(CustodyForm form) {
        return form.version() == null ? -1 : form.version();
    }
}
