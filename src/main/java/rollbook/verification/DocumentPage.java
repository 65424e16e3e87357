package rollbook.verification;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import rollbook.inventory.MediaItem;

/**
 * All that a document's page shows.
 *
 * @param rollIds the production's rolls by code
 * @param media the items that hold copies
 */
record DocumentPage(
        Document document,
        DocumentDetails.Details details,
        List<PartView> parts,
        List<DocumentDetails.Judged> judged,
        Map<String, UUID> rollIds,
        List<MediaItem> media) {

    List<PartView> waiting() {
        return parts.stream().filter(part -> !part.isAssigned()).toList();
    }

    List<PartView> assigned() {
        return parts.stream().filter(PartView::isAssigned).toList();
    }

    /** Those of which only the medium has to be confirmed. */
    List<PartView> confirmable() {
        return waiting().stream().filter(part -> part.roll() != null).toList();
    }

    /** What all the confirmable parts probably describe. */
    Described guess() {
        return confirmable().stream().findFirst().map(PartView::describes).orElse(Described.UNSAID);
    }
}
