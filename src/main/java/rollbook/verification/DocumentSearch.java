package rollbook.verification;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** Finds a document by what people know of it: its file name, or the first digits of its SHA-256. */
@Service
public class DocumentSearch {
    /** Fewer digits would find by chance. */
    private static final int SHORTEST = 6;

    private final Documents documents;

    DocumentSearch(Documents documents) {
        this.documents = documents;
    }

    /** The only document that the text means, or nothing. */
    public Optional<UUID> find(UUID productionId, String text) {
        if (text.length() < SHORTEST) {
            return Optional.empty();
        }
        List<Document> found =
                documents.find(productionId, text.replace("%", "").replace("_", "\\_"));
        return found.size() == 1 ? Optional.of(found.get(0).id()) : Optional.empty();
    }
}
