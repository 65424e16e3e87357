package rollbook.inventory;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import rollbook.production.MediaKind;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Listing;

/** Reads which items an address asks for, and in which order. */
@Component
class MediaListings {
    private final Display display;

    MediaListings(Display display) {
        this.display = display;
    }

    /** What was asked for, and the addresses of the list that was asked. */
    record Asked(Listing listing, MediaFilter filter, Listing.Order<ListColumn> order) {}

    Asked read(String path, Map<String, String> address) {
        Listing listing = Listing.of(path, address);
        MediaFilter filter = MediaFilter.of(
                listing.choose(
                        "kind",
                        display.text("inventory.column.KIND"),
                        display.text("inventory.filter.any-kind"),
                        kinds()),
                listing.choose(
                        "state",
                        display.text("inventory.column.STATE"),
                        display.text(MediaFilter.State.PRESENT.key()),
                        states()),
                listing.text("q", display.text("inventory.filter.text")));
        return new Asked(
                listing,
                filter,
                listing.order(ListColumn.values(), ListColumn.USUAL, column -> display.text(column.key())));
    }

    private List<Choice> kinds() {
        return Arrays.stream(MediaKind.values())
                .map(value -> new Choice(value.name(), display.text("inventory.kind." + value.name())))
                .toList();
    }

    private List<Choice> states() {
        return Arrays.stream(MediaFilter.State.values())
                .filter(value -> value != MediaFilter.State.PRESENT)
                .map(value -> new Choice(value.name(), display.text(value.key())))
                .toList();
    }
}
