package rollbook.verification;

import jakarta.validation.Valid;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.verification.ClearingGate.CopyState;
import rollbook.verification.RollController.CardForm;
import rollbook.web.Display;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;

/** The clearing of a drive, array or tape that comes back into use, and the record of its erasure. */
@Controller
class MediumController {
    private final MediaItems items;
    private final MediumClearances clearances;
    private final CopyStandings standings;
    private final Display display;

    MediumController(MediaItems items, MediumClearances clearances, CopyStandings standings, Display display) {
        this.items = items;
        this.clearances = clearances;
        this.standings = standings;
        this.display = display;
    }

    /**
     * What the pages show on which somebody decides about the medium.
     *
     * @param proven a sentence for the rolls that are proven on the same other media
     * @param held a sentence for each that isn't
     */
    record View(
            MediaItem item,
            MediumStanding.State state,
            String sentence,
            List<String> proven,
            List<String> held,
            List<MediumClearance> clearances) {}

    @GetMapping("/p/{production}/media/{item:[0-9a-fA-F-]{36}}/clear")
    ModelAndView askToClear(Membership membership, @PathVariable UUID item) {
        return page("medium-clear", view(membership, item), HttpStatus.OK).addObject("cardForm", new CardForm(""));
    }

    @PostMapping("/p/{production}/media/{item:[0-9a-fA-F-]{36}}/clear")
    @AllowedFor({Role.WRANGLER, Role.POST})
    ModelAndView clear(
            Membership membership,
            @PathVariable UUID item,
            @Valid @ModelAttribute CardForm form,
            BindingResult errors,
            RedirectAttributes flash) {
        View view = view(membership, item);
        if (!meansIt(form, errors, view)) {
            return page("medium-clear", view, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        clearances.clear(membership, item, form.code());
        flash.addFlashAttribute(
                "notice", Notice.of("verification.cleared", view.item().code()));
        return new ModelAndView("redirect:" + membership.path("media/" + item + "/erase"));
    }

    @GetMapping("/p/{production}/media/{item:[0-9a-fA-F-]{36}}/erase")
    ModelAndView askToErase(Membership membership, @PathVariable UUID item) {
        return page("medium-erase", view(membership, item), HttpStatus.OK).addObject("cardForm", new CardForm(""));
    }

    @PostMapping("/p/{production}/media/{item:[0-9a-fA-F-]{36}}/erase")
    @AllowedFor({Role.WRANGLER, Role.POST})
    ModelAndView recordErasure(
            Membership membership,
            @PathVariable UUID item,
            @Valid @ModelAttribute CardForm form,
            BindingResult errors,
            RedirectAttributes flash) {
        View view = view(membership, item);
        if (!meansIt(form, errors, view)) {
            return page("medium-erase", view, HttpStatus.UNPROCESSABLE_CONTENT);
        }
        clearances.recordErasure(membership, item, form.code());
        flash.addFlashAttribute(
                "notice", Notice.of("verification.medium.erased", view.item().code()));
        return new ModelAndView("redirect:" + membership.path("media/" + item));
    }

    private static ModelAndView page(String template, View view, HttpStatus status) {
        return new ModelAndView("verification/" + template, status)
                .addObject("view", view)
                .addObject("place", "media");
    }

    private static boolean meansIt(CardForm form, BindingResult errors, View view) {
        if (!errors.hasErrors()
                && !view.item().code().equalsIgnoreCase(form.code().strip())) {
            errors.rejectValue(
                    "code",
                    "verification.other-medium",
                    new Object[] {view.item().code()},
                    null);
        }
        return !errors.hasErrors();
    }

    private View view(Membership membership, UUID itemId) {
        MediaItem item = items.get(membership.productionId(), itemId);
        if (!item.kind().holdsCopies()) {
            throw new NotFoundException();
        }
        MediumProof proof = clearances.proof(membership.productionId(), item);
        List<MediumClearance> all = clearances.ofItem(membership.productionId(), itemId);
        MediumStanding.State state = MediumStanding.State.of(proof, all.stream().anyMatch(MediumClearance::stands));
        return new View(
                item,
                state,
                display.text(
                        "verification.medium.sentence." + state.name(),
                        item.code(),
                        proof.rolls().size(),
                        proof.held().size()),
                proven(proof),
                proof.held().stream().map(standings::held).toList(),
                all);
    }

    private List<String> proven(MediumProof proof) {
        Map<String, List<String>> rollsByMedia = new LinkedHashMap<>();
        proof.rolls().stream()
                .filter(roll -> roll.proof().holds().isEmpty())
                .forEach(roll -> rollsByMedia
                        .computeIfAbsent(media(roll.proof()), media -> new ArrayList<>())
                        .add(roll.rollCode()));
        return rollsByMedia.entrySet().stream()
                .map(same ->
                        display.text("verification.medium.proven", String.join(", ", same.getValue()), same.getKey()))
                .toList();
    }

    private static String media(Proof proof) {
        return proof.counting().stream()
                .map(CopyState::itemCode)
                .distinct()
                .sorted()
                .collect(Collectors.joining(", "));
    }
}
