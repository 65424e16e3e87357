package rollbook.verification;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Component;
import rollbook.web.Choice;
import rollbook.web.Display;
import rollbook.web.Listing;

/** Reads which documents an address asks for, and in which order. */
@Component
class DocumentListing {
    private final Display display;

    DocumentListing(Display display) {
        this.display = display;
    }

    record Asked(Listing listing, DocumentList.Wanted wanted) {}

    Asked read(String path, Map<String, String> address, DocumentList.Counts counts) {
        Listing listing = Listing.of(path, address);
        listing.also("item");
        String state = listing.choose(
                "state",
                display.text("verification.documents.filter"),
                display.text("verification.documents.filter.all", counts.all()),
                Arrays.stream(Document.Standing.values())
                        .map(one -> new Choice(
                                one.name(), display.text("verification.documents.filter." + one, counts.of(one))))
                        .toList());
        String text = listing.text("q", display.text("verification.documents.filter.text"));
        return new Asked(
                listing,
                new DocumentList.Wanted(
                        state.isEmpty() ? null : Document.Standing.valueOf(state),
                        text,
                        listing.order(
                                DocumentList.Column.values(),
                                DocumentList.Column.USUAL,
                                column -> display.text("verification.documents.column."
                                        + column.name().toLowerCase(Locale.ROOT)))));
    }
}
