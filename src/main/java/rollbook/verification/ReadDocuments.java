package rollbook.verification;

import java.lang.ref.SoftReference;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.manifest.DocumentHints;
import rollbook.manifest.PackedEntries;

/**
 * Remembers what documents list, as long as there is memory for it, so that a document that was just read need not be
 * read again to be judged. A document never changes, so with the same hints what is remembered is never wrong.
 */
@Component
class ReadDocuments {
    private final Map<Reading, SoftReference<PackedEntries>> entries = new ConcurrentHashMap<>();

    private record Reading(UUID documentId, DocumentHints hints) {}

    void remember(UUID documentId, DocumentHints hints, @Nullable PackedEntries read) {
        entries.values().removeIf(reference -> reference.refersTo(null));
        if (read != null) {
            entries.put(new Reading(documentId, hints), new SoftReference<>(read));
        }
    }

    Optional<PackedEntries> entries(UUID documentId, DocumentHints hints) {
        return Optional.ofNullable(entries.get(new Reading(documentId, hints))).map(SoftReference::get);
    }

    void forgetAll() {
        entries.clear();
    }

    /** How much of the memory the entries of one document may take to be remembered. */
    static long mostBytes() {
        return Runtime.getRuntime().maxMemory() / 3;
    }
}
