package rollbook.offload;

import jakarta.validation.Valid;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.inventory.CardState;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.AllowedFor;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.Notice;

/** A blank card goes into a camera. */
@Controller
@RequestMapping("/p/{production}/rolls/load")
class LoadController {
    private final LoadPages pages;
    private final Rolls rolls;
    private final MediaItems items;
    private final Display display;

    LoadController(LoadPages pages, Rolls rolls, MediaItems items, Display display) {
        this.pages = pages;
        this.rolls = rolls;
        this.items = items;
        this.display = display;
    }

    @GetMapping
    @AllowedFor(Role.WRANGLER)
    ModelAndView show(Membership by, @RequestParam(required = false) @Nullable UUID camera) {
        Optional<LoadPage> page = pages.page(by, camera);
        ModelAndView view = view(page);
        page.ifPresent(present -> view.addObject("loadForm", present.proposal()));
        return view;
    }

    @PostMapping
    @AllowedFor(Role.WRANGLER)
    Object load(Membership by, @Valid LoadForm form, BindingResult result, RedirectAttributes flash) {
        Optional<MediaItem> card = form == null ? Optional.empty() : blankCard(by, form, result);
        String code = form == null ? "" : freeCode(by, form, result);
        if (result.hasErrors()) {
            ModelAndView view = view(pages.page(by, camera(result)));
            view.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return view;
        }
        UUID roll = rolls.load(
                by, code, form.camera(), form.day(), card.orElseThrow().id(), form.format());
        flash.addFlashAttribute(
                "notice", Notice.of("offload.load.done", card.orElseThrow().code(), code));
        return "redirect:" + by.path("rolls/" + roll);
    }

    private Optional<MediaItem> blankCard(Membership by, LoadForm form, BindingResult result) {
        String typed = form.card() == null ? "" : form.card().strip();
        Optional<MediaItem> found =
                items.findByCode(by.productionId(), typed).filter(item -> item.kind() == MediaKind.CARD);
        if (found.isPresent()) {
            refuseUnlessBlank(found.get(), result);
        } else if (!typed.isEmpty()) {
            result.rejectValue("card", "offload.load.card.unknown", new Object[] {typed}, null);
        }
        return found;
    }

    private void refuseUnlessBlank(MediaItem card, BindingResult result) {
        if (!card.usable()) {
            result.rejectValue("card", "offload.load.card.doubted", new Object[] {card.code()}, null);
        } else if (card.cardState() != CardState.BLANK) {
            String state = display.text("web.card-state." + card.cardState());
            result.rejectValue("card", "offload.load.card.not-blank", new Object[] {card.code(), state}, null);
        }
    }

    private String freeCode(Membership by, LoadForm form, BindingResult result) {
        String code = form.code() == null || form.code().isBlank()
                ? pages.page(by, form.camera()).orElseThrow().nextCode()
                : form.code().strip().toUpperCase(Locale.ROOT);
        if (rolls.findByCode(by.productionId(), code).isPresent()) {
            result.rejectValue("code", "offload.load.code.taken", new Object[] {code}, null);
        }
        return code;
    }

    /** The camera that was sent, even if the rest of the form could not be read. */
    private static @Nullable UUID camera(BindingResult result) {
        return result.getTarget() instanceof LoadForm form ? form.camera() : null;
    }

    private ModelAndView view(Optional<LoadPage> page) {
        ModelAndView view = new ModelAndView("offload/load");
        view.addObject("page", page.orElse(null));
        view.addObject(
                "sentence",
                page.map(present -> display.text(
                                "offload.load.sentence",
                                present.camera().letter(),
                                present.nextCode(),
                                present.blankCards().size()))
                        .orElseGet(() -> display.text("offload.load.no-camera")));
        return view;
    }
}
