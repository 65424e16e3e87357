package rollbook.inventory;

import static org.springframework.http.HttpStatus.UNPROCESSABLE_CONTENT;

import jakarta.servlet.http.HttpServletResponse;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
import rollbook.production.CopyPlan;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.Notice;
import rollbook.web.Refusal;

/** The page of an item, which its label leads to, and the form that corrects it. */
@Controller
@RequestMapping("/p/{production}/media/{id:[0-9a-fA-F-]{36}}")
class ItemController {
    private final MediaItems items;
    private final Custody custody;
    private final Inventory inventory;
    private final CopyPlan plan;
    private final ItemFormPage page;
    private final MediaSentences sentences;
    private final TrailPictures trails;
    private final Display display;

    ItemController(
            MediaItems items,
            Custody custody,
            Inventory inventory,
            CopyPlan plan,
            ItemFormPage page,
            MediaSentences sentences,
            TrailPictures trails,
            Display display) {
        this.items = items;
        this.custody = custody;
        this.inventory = inventory;
        this.plan = plan;
        this.page = page;
        this.sentences = sentences;
        this.trails = trails;
        this.display = display;
    }

    @GetMapping
    String show(Membership membership, @PathVariable UUID id, Model model) {
        MediaItem item = items.get(membership.productionId(), id);
        model.addAttribute("row", row(membership, item));
        model.addAttribute("item", item);
        model.addAttribute("base", membership.path("media/" + id));
        model.addAttribute("sentence", sentences.of(item));
        model.addAttribute(
                "cost",
                item.costMinorUnits() == null
                        ? null
                        : display.money(item.costMinorUnits(), Currency.getInstance(membership.currency())));
        List<CustodyEntry> chain = custody.chain(membership.productionId(), id);
        model.addAttribute("chain", chain);
        model.addAttribute("trail", trails.picture(membership, item, chain));
        Optional<ItemJourney.Journey> journey = custody.journey(membership.productionId(), id);
        journey.ifPresent(under -> {
            model.addAttribute("journey", under);
            model.addAttribute(
                    "journeySays",
                    display.text(under.says().key(), under.says().args().toArray()));
        });
        model.addAttribute("acts", acts(membership, item, journey.isPresent()));
        model.addAttribute(
                "mayHandOver",
                journey.isEmpty() && membership.mayShip() && CustodyAct.MOVED.startsFrom(item.condition()));
        model.addAttribute("keptByRoll", keptByRoll(membership, item));
        return "inventory/item";
    }

    @GetMapping("/edit")
    @AllowedFor(Role.OFFICE)
    String form(Membership membership, @PathVariable UUID id, Model model) {
        MediaItem item = items.get(membership.productionId(), id);
        ItemFormPage.Words words = page.words(membership);
        page.addChoices(model, words);
        model.addAttribute("item", item);
        model.addAttribute("itemForm", ItemForm.of(row(membership, item), words.money()));
        return "inventory/edit";
    }

    @PostMapping("/edit")
    @AllowedFor(Role.OFFICE)
    String edit(
            Membership membership,
            @PathVariable UUID id,
            @ModelAttribute ItemForm form,
            BindingResult result,
            Model model,
            HttpServletResponse response,
            RedirectAttributes flash) {
        MediaItem item = items.get(membership.productionId(), id);
        ItemFormPage.Words words = page.words(membership);
        ItemReading.Read read = page.read(form.cellsOf(item), words, result, Map.of());
        if (!result.hasErrors()) {
            try {
                NewItem edited = read.sound();
                inventory.edit(membership, id, edited.details(), version(form));
                flash.addFlashAttribute("notice", Notice.of("inventory.edited", edited.code()));
                return "redirect:" + membership.path("media/" + id);
            } catch (Refusal refusal) {
                page.reject(result, refusal.key().equals(Inventory.UNDER_AGREEMENT) ? "hiredUntil" : "code", refusal);
            }
        }
        response.setStatus(UNPROCESSABLE_CONTENT.value());
        page.addChoices(model, words);
        model.addAttribute("item", item);
        return "inventory/edit";
    }

    private ItemRow row(Membership membership, MediaItem item) {
        UUID legId = item.legId();
        return new ItemRow(
                item,
                legId == null
                        ? null
                        : plan.leg(membership.productionId(), legId).name());
    }

    private static List<CustodyAct> acts(Membership membership, MediaItem item, boolean underWay) {
        return Arrays.stream(CustodyAct.values())
                .filter(act -> act.hasForm() && act.startsFrom(item.condition()))
                .filter(act -> !underWay || act != CustodyAct.MOVED)
                .filter(act -> act.isForGood()
                        ? membership.mayKeepBooks() && !mayHoldRoll(item)
                        : membership.may(Role.WRANGLER, Role.OFFICE))
                .filter(act -> act != CustodyAct.RETURNED || item.ownership() == Ownership.HIRED)
                .toList();
    }

    private static boolean keptByRoll(Membership membership, MediaItem item) {
        return membership.mayKeepBooks() && mayHoldRoll(item) && CustodyAct.RETIRED.startsFrom(item.condition());
    }

    private static boolean mayHoldRoll(MediaItem item) {
        return item.cardState() != null && item.cardState() != CardState.BLANK;
    }

    /** A form without a version, or with nonsense for one, was made before any that exists. */
    static int version(ItemForm form) {
        return form.version().matches("\\d{1,9}") ? Integer.parseInt(form.version()) : -1;
    }
}
