package rollbook.verification;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.CookieValue;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.AllowedFor;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Role;

/** The list of documents, and their intake. */
@Controller
@RequestMapping("/p/{production}/documents")
class DocumentsController {
    private final DocumentList list;
    private final DocumentListing listing;
    private final Deliveries deliveries;
    private final MediaItems items;
    private final DocumentSentences sentences;
    private final Uploads uploads;

    DocumentsController(
            DocumentList list,
            DocumentListing listing,
            Deliveries deliveries,
            MediaItems items,
            DocumentSentences sentences,
            Uploads uploads) {
        this.list = list;
        this.listing = listing;
        this.deliveries = deliveries;
        this.items = items;
        this.sentences = sentences;
        this.uploads = uploads;
    }

    /** @param item the id or code of what the person comes from: a medium that holds copies, or a card */
    @GetMapping
    String list(
            Membership membership,
            @RequestParam(required = false) @Nullable String item,
            @RequestParam Map<String, String> address,
            @CookieValue(name = Described.LAST_CHOICE, required = false) @Nullable String lastChoice,
            Model model) {
        List<MediaItem> media = items.list(membership.productionId());
        String chosen = item == null ? Described.of(lastChoice).value() : chosen(media, item);
        return list(membership, media, chosen, address, model);
    }

    private String list(
            Membership membership, List<MediaItem> media, String chosen, Map<String, String> address, Model model) {
        DocumentList.Counts counts = list.counts(membership.productionId());
        DocumentListing.Asked asked = listing.read(membership.path("documents"), address, counts);
        boolean maySay = maySay(membership);
        model.addAttribute("counts", counts);
        model.addAttribute("list", asked.listing());
        model.addAttribute(
                "paged",
                list.page(
                        membership.productionId(),
                        asked.wanted(),
                        asked.listing().page(),
                        counts));
        model.addAttribute(
                "media", media.stream().filter(one -> one.kind().holdsCopies()).toList());
        model.addAttribute("chosen", chosen);
        model.addAttribute("maySay", maySay);
        model.addAttribute("mostBytes", uploads.mostBytes());
        List<Upload> unfinished = maySay ? uploads.unfinished(membership) : List.of();
        model.addAttribute("unfinished", unfinished);
        model.addAttribute("sentence", sentences.list(counts, maySay, unfinished.size()));
        model.addAttribute("words", sentences);
        return "verification/documents";
    }

    private static String chosen(List<MediaItem> media, String item) {
        Optional<MediaItem> named = media.stream()
                .filter(one -> one.code().equalsIgnoreCase(item.strip())
                        || one.id().toString().equals(item))
                .findFirst();
        return named.map(one -> one.kind() == MediaKind.CARD
                        ? Described.CARD
                        : one.kind().holdsCopies() ? Described.copyOn(one.id()) : Described.UNSAID)
                .orElse(Described.of(item))
                .value();
    }

    static boolean maySay(Membership membership) {
        return membership.may(Role.WRANGLER, Role.POST);
    }

    /**
     * @param describes what all these files describe
     * @param delivery an earlier delivery that these files belong to: a browser that sends one by one names it
     */
    @PostMapping
    @AllowedFor({Role.WRANGLER, Role.POST})
    String send(
            Membership membership,
            @RequestParam(name = "file", required = false) @Nullable List<MultipartFile> files,
            @RequestParam(defaultValue = "") String describes,
            @RequestParam(required = false) @Nullable UUID delivery,
            HttpServletRequest request,
            HttpServletResponse response,
            Model model)
            throws IOException {
        List<MediaItem> media = items.list(membership.productionId());
        List<MultipartFile> chosen = files == null
                ? List.of()
                : files.stream().filter(this::isChosen).toList();
        Described said = Described.of(describes);
        if (chosen.isEmpty() || !isKnown(media, describes)) {
            model.addAttribute("problem", chosen.isEmpty() ? "file" : "describes");
            model.addAttribute("invalid", true);
            response.setStatus(HttpStatus.UNPROCESSABLE_CONTENT.value());
            return list(membership, media, said.value(), Map.of(), model);
        }
        UUID together = deliveries.receive(membership, delivery, chosen, said);
        said.remember(membership, request, response);
        return "redirect:" + membership.path("documents/deliveries/" + together);
    }

    /** A file field that was left empty sends one file without a name and without content. */
    private boolean isChosen(MultipartFile file) {
        return !file.isEmpty()
                || file.getOriginalFilename() != null
                        && !file.getOriginalFilename().isEmpty();
    }

    private static boolean isKnown(List<MediaItem> media, String describes) {
        Described said = Described.of(describes);
        return said.itemId() == null
                ? describes.equals(said.value())
                : media.stream()
                        .anyMatch(one ->
                                one.id().equals(said.itemId()) && one.kind().holdsCopies());
    }

    @GetMapping("/deliveries/{delivery}")
    String delivery(Membership membership, @PathVariable UUID delivery, Model model) {
        List<DeliveredFile> files = deliveries.get(membership.productionId(), delivery);
        model.addAttribute("files", files);
        model.addAttribute("delivery", delivery);
        model.addAttribute("beingRead", files.stream().anyMatch(DeliveredFile::beingRead));
        model.addAttribute("sentence", sentences.delivery(files));
        return "verification/delivery";
    }
}
