package rollbook.verification;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.MediaItem;

/**
 * All that a document's page shows.
 *
 * @param archive what it holds, if it is an archive that was opened
 * @param rollIds the production's rolls by code
 * @param media the items that hold copies
 */
record DocumentPage(
        Document document,
        DocumentDetails.Details details,
        List<AlgorithmQuestion> questions,
        @Nullable ArchivePage archive,
        List<PartView> parts,
        List<DocumentDetails.Judged> judged,
        Map<String, UUID> rollIds,
        List<MediaItem> media) {

    public List<PartView> waiting() {
        return parts.stream().filter(part -> !part.isAssigned()).toList();
    }

    public List<PartView> assigned() {
        return parts.stream().filter(PartView::isAssigned).toList();
    }

    /** Whether the document was sent under a name that could not be kept as it was. */
    public boolean renamed() {
        return details.sentName() != null && !details.sentName().equals(document.fileName());
    }

    /** Those of which only the medium has to be confirmed. */
    public List<PartView> confirmable() {
        return waiting().stream().filter(part -> part.roll() != null).toList();
    }

    /** What all the confirmable parts probably describe. */
    public Described guess() {
        return confirmable().stream().findFirst().map(PartView::describes).orElse(Described.UNSAID);
    }
}
