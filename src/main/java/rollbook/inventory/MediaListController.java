package rollbook.inventory;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.util.UriComponentsBuilder;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.quantity.Money;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.FileAnswer;

/** The list of what the production has, as a page and as a file. */
@Controller
class MediaListController {
    private final MediaList list;
    private final MediaSentences sentences;
    private final ColumnHeaders headers;
    private final Display display;
    private final Clock clock;

    MediaListController(MediaList list, MediaSentences sentences, ColumnHeaders headers, Display display, Clock clock) {
        this.list = list;
        this.sentences = sentences;
        this.headers = headers;
        this.display = display;
        this.clock = clock;
    }

    @GetMapping("/p/{production}/media")
    String list(
            Membership membership,
            @RequestParam(required = false) @Nullable String kind,
            @RequestParam(required = false) @Nullable String state,
            @RequestParam(required = false) @Nullable String q,
            @RequestParam(defaultValue = "1") String page,
            Model model) {
        MediaFilter filter = MediaFilter.of(kind, state, q);
        MediaFigures figures =
                list.figures(membership.productionId(), LocalDate.now(clock.withZone(membership.zone())));
        model.addAttribute("figures", figures);
        model.addAttribute("sentence", figures.registered() == 0 ? null : sentences.of(figures));
        model.addAttribute("filter", filter);
        model.addAttribute("paged", list.page(membership.productionId(), filter, number(page)));
        model.addAttribute("href", address(membership.path("media"), filter));
        model.addAttribute("csvHref", address(membership.path("media.csv"), filter));
        model.addAttribute("labelsHref", address(membership.path("media/labels/of-list"), filter));
        model.addAttribute(
                "kinds",
                Arrays.stream(MediaKind.values())
                        .map(value -> new Choice(value.name(), display.text("inventory.kind." + value.name())))
                        .toList());
        model.addAttribute(
                "states",
                Arrays.stream(MediaFilter.State.values())
                        .map(value -> new Choice(value.name(), display.text(value.key())))
                        .toList());
        return "inventory/list";
    }

    @GetMapping("/p/{production}/media.csv")
    void export(
            Membership membership,
            @RequestParam(required = false) @Nullable String kind,
            @RequestParam(required = false) @Nullable String state,
            @RequestParam(required = false) @Nullable String q,
            HttpServletResponse response)
            throws IOException {
        List<ItemRow> rows = list.all(membership.productionId(), MediaFilter.of(kind, state, q));
        FileAnswer.startCsv(response, "media-" + membership.code().toLowerCase(Locale.ROOT) + ".csv");
        new ItemCsvWriter(headers.all(), Money.of(membership.currency())).write(rows, response.getWriter());
    }

    private static String address(String path, MediaFilter filter) {
        UriComponentsBuilder address = UriComponentsBuilder.fromPath(path);
        filter.parameters().forEach((name, value) -> address.queryParam(name, "{" + name + "}"));
        return address.encode().buildAndExpand(filter.parameters()).toUriString();
    }

    private static int number(String page) {
        return page.matches("\\d{1,9}") ? Integer.parseInt(page) : 1;
    }
}
