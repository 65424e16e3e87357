package rollbook.inventory;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.validation.BindingResult;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import rollbook.production.AllowedFor;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.web.Display;
import rollbook.web.Listing;
import rollbook.web.NotFoundException;
import rollbook.web.Notice;

/**
 * One act on several items that were ticked on the list: first a page that says what it will do to which, then the act. It
 * leads back to the list as it was. What is for good has no place here: it asks for each item's code.
 */
@Controller
@RequestMapping("/p/{production}/media/several")
class SeveralController {
    static final List<CustodyAct> ACTS =
            List.of(CustodyAct.MOVED, CustodyAct.QUARANTINED, CustodyAct.RELEASED, CustodyAct.LOST, CustodyAct.FOUND);

    private static final Pattern SEEN = Pattern.compile("([0-9a-fA-F-]{36}):(\\d{1,9})");

    private final MediaItems items;
    private final MediaList list;
    private final MediaListings listings;
    private final SeveralItems several;
    private final ItemFormPage page;
    private final Display display;

    SeveralController(
            MediaItems items,
            MediaList list,
            MediaListings listings,
            SeveralItems several,
            ItemFormPage page,
            Display display) {
        this.items = items;
        this.list = list;
        this.listings = listings;
        this.several = several;
        this.page = page;
        this.display = display;
    }

    /**
     * @param codes of the items that are ticked
     * @param all whether all are meant that the list shows, on all its pages
     */
    @GetMapping
    @AllowedFor({Role.WRANGLER, Role.OFFICE})
    ModelAndView ask(
            Membership membership,
            @RequestParam(name = "act", defaultValue = "") String act,
            @RequestParam(name = "items", defaultValue = "") List<String> codes,
            @RequestParam(name = "all", defaultValue = "false") String all,
            @RequestParam Map<String, String> address) {
        CustodyAct what = act(act);
        MediaListings.Asked asked = listings.read(membership.path("media"), address);
        List<MediaItem> chosen = all.equals("true")
                ? list.items(membership.productionId(), asked.filter())
                : items.findByCodes(membership.productionId(), codes).stream()
                        .sorted(Comparator.comparing(MediaItem::code))
                        .toList();
        boolean askable = !chosen.isEmpty() && chosen.size() <= SeveralItems.MOST;
        return page(membership, what, askable ? chosen : List.of(), asked.listing())
                .addObject("tooMany", chosen.size() > SeveralItems.MOST ? chosen.size() : null)
                .addObject("custodyForm", new CustodyForm(null, "", "", "", null));
    }

    /** @param seen the items with the versions that the person saw */
    @PostMapping("/{act:move|quarantine|release|lost|found}")
    @AllowedFor({Role.WRANGLER, Role.OFFICE})
    ModelAndView enter(
            Membership membership,
            @PathVariable String act,
            @ModelAttribute CustodyForm form,
            BindingResult result,
            @RequestParam(name = "seen", defaultValue = "") List<String> seen,
            @RequestParam Map<String, String> address,
            RedirectAttributes flash) {
        CustodyAct what = act(act);
        Listing listing = listings.read(membership.path("media"), address).listing();
        List<SeveralItems.Seen> each = seen(seen);
        page.check(what, form, result);
        if (result.hasErrors() || each.isEmpty()) {
            List<UUID> ids = each.stream().map(SeveralItems.Seen::id).toList();
            ModelAndView again = page(membership, what, items.findByIds(membership.productionId(), ids), listing);
            again.setStatus(HttpStatus.UNPROCESSABLE_CONTENT);
            return again;
        }
        several.enter(membership, what, each, form.placeId(), form.holderText(), form.reasonText());
        flash.addFlashAttribute("notice", Notice.of("inventory.several.done." + what, each.size()));
        return new ModelAndView("redirect:" + listing.href());
    }

    private ModelAndView page(Membership membership, CustodyAct act, List<MediaItem> chosen, Listing listing) {
        SeveralItems.Preview preview = several.look(membership.productionId(), act, chosen);
        ModelAndView view = new ModelAndView("inventory/several")
                .addObject("act", act)
                .addObject("list", listing)
                .addObject("will", preview.will())
                .addObject(
                        "kept",
                        preview.kept().stream()
                                .map(kept -> new KeptRow(kept.item(), display.text(kept.why())))
                                .toList())
                .addObject("tooMany", null);
        if (act.moves()) {
            view.addObject("places", page.places(membership));
        }
        return view;
    }

    /** @param why the act can't be done to it */
    record KeptRow(MediaItem item, String why) {}

    private static CustodyAct act(String path) {
        return CustodyAct.ofPath(path).filter(ACTS::contains).orElseThrow(NotFoundException::new);
    }

    private static List<SeveralItems.Seen> seen(List<String> texts) {
        List<SeveralItems.Seen> seen = new ArrayList<>();
        for (String text : texts) {
            Matcher parts = SEEN.matcher(text);
            if (!parts.matches() || seen.size() == SeveralItems.MOST) {
                throw new NotFoundException();
            }
            seen.add(new SeveralItems.Seen(id(parts.group(1)), Integer.parseInt(parts.group(2))));
        }
        return seen;
    }

    private static UUID id(String text) {
        try {
            return UUID.fromString(text);
        } catch (IllegalArgumentException malformed) {
            throw new NotFoundException();
        }
    }
}
