package rollbook.verification;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.offload.Rolls;
import rollbook.production.MediaKind;
import rollbook.web.NotFoundException;

/** Gathers what a document's page shows, in a fixed number of statements. */
@Component
class DocumentPages {
    private final Documents documents;
    private final DocumentDetails details;
    private final AlgorithmStatements algorithms;
    private final ArchivePages archives;
    private final Assignments assignments;
    private final Rolls rolls;
    private final MediaItems items;

    DocumentPages(
            Documents documents,
            DocumentDetails details,
            AlgorithmStatements algorithms,
            ArchivePages archives,
            Assignments assignments,
            Rolls rolls,
            MediaItems items) {
        this.documents = documents;
        this.details = details;
        this.algorithms = algorithms;
        this.archives = archives;
        this.assignments = assignments;
        this.rolls = rolls;
        this.items = items;
    }

    /** @throws NotFoundException if this production has no such document */
    DocumentPage get(UUID productionId, UUID documentId) {
        Document document = documents.get(productionId, documentId);
        DocumentDetails.Details found = details.details(productionId, documentId);
        if (document.state() != Document.State.READ || document.isArchive()) {
            ArchivePage archive = document.isArchive() ? archives.get(productionId, documentId) : null;
            return new DocumentPage(document, found, List.of(), archive, List.of(), List.of(), Map.of(), List.of());
        }
        Map<String, UUID> rollIds = rolls.idsByCode(productionId);
        List<MediaItem> media = items.list(productionId, MediaKind.DRIVE, MediaKind.ARRAY, MediaKind.TAPE);
        Map<UUID, List<Assignment>> byPart = assignments.ofDocument(productionId, documentId).stream()
                .collect(Collectors.groupingBy(Assignment::partId));
        List<PartView> parts = assignments.parts(productionId, documentId).stream()
                .map(part -> view(document, part, byPart.getOrDefault(part.id(), List.of()), rollIds, media))
                .toList();
        List<AlgorithmQuestion> questions = algorithms.questions(document);
        return new DocumentPage(
                document, found, questions, null, parts, details.judged(productionId, documentId), rollIds, media);
    }

    private static PartView view(
            Document document,
            Part part,
            List<Assignment> assignments,
            Map<String, UUID> rollIds,
            List<MediaItem> media) {
        Described describes = document.saidSubject() == null
                ? new Described(part.guessSubject(), part.guessItemId())
                : new Described(document.saidSubject(), document.saidItemId());
        String medium = media.stream()
                .filter(item -> item.id().equals(describes.itemId()))
                .map(MediaItem::code)
                .findFirst()
                .orElse("");
        return new PartView(part, assignments, roll(part, rollIds), describes, medium);
    }

    /** The roll that was guessed when the document was read, or one logged since that a folder is called by. */
    private static @Nullable String roll(Part part, Map<String, UUID> rollIds) {
        if (part.guessRollCode() != null) {
            return part.guessRollCode();
        }
        String[] folders = part.folder().toUpperCase(Locale.ROOT).split("/");
        for (int i = folders.length - 1; i >= 0; i--) {
            if (rollIds.containsKey(folders[i])) {
                return folders[i];
            }
        }
        return null;
    }
}
