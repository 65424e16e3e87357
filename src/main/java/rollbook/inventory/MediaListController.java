package rollbook.inventory;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import rollbook.production.Membership;
import rollbook.quantity.Money;
import rollbook.web.FileAnswer;
import rollbook.web.Listing;

/** The list of what the production has, as a page and as a file. */
@Controller
class MediaListController {
    private final MediaList list;
    private final MediaListings listings;
    private final MediaSentences sentences;
    private final ColumnHeaders headers;
    private final Clock clock;

    MediaListController(
            MediaList list, MediaListings listings, MediaSentences sentences, ColumnHeaders headers, Clock clock) {
        this.list = list;
        this.listings = listings;
        this.sentences = sentences;
        this.headers = headers;
        this.clock = clock;
    }

    @GetMapping("/p/{production}/media")
    String list(Membership membership, @RequestParam Map<String, String> address, Model model) {
        MediaListings.Asked asked = listings.read(membership.path("media"), address);
        Listing listing = asked.listing();
        MediaFigures figures =
                list.figures(membership.productionId(), LocalDate.now(clock.withZone(membership.zone())));
        model.addAttribute("figures", figures);
        model.addAttribute("sentence", figures.registered() == 0 ? null : sentences.of(figures));
        model.addAttribute("list", listing);
        model.addAttribute(
                "paged", list.page(membership.productionId(), asked.filter(), asked.order(), listing.page()));
        model.addAttribute("csvHref", listing.at(membership.path("media.csv")));
        model.addAttribute("labelsHref", listing.at(membership.path("media/labels/of-list")));
        model.addAttribute("acts", SeveralController.ACTS);
        return "inventory/list";
    }

    @GetMapping("/p/{production}/media.csv")
    void export(Membership membership, @RequestParam Map<String, String> address, HttpServletResponse response)
            throws IOException {
        MediaListings.Asked asked = listings.read(membership.path("media"), address);
        List<ItemRow> rows = list.all(membership.productionId(), asked.filter(), asked.order());
        FileAnswer.startCsv(response, "media-" + membership.code().toLowerCase(Locale.ROOT) + ".csv");
        new ItemCsvWriter(headers.all(), Money.of(membership.currency())).write(rows, response.getWriter());
    }
}
