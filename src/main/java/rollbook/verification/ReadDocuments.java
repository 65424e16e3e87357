package rollbook.verification;

import java.lang.ref.SoftReference;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
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
    /** The one that was used longest ago first. */
    private final Map<Reading, Remembered> entries = new LinkedHashMap<>(16, 0.75f, true);

    private record Reading(UUID documentId, DocumentHints hints) {}

    private record Remembered(long bytes, SoftReference<PackedEntries> entries) {}

    synchronized void remember(UUID documentId, DocumentHints hints, @Nullable PackedEntries read) {
        entries.values().removeIf(one -> one.entries().refersTo(null));
        if (read == null) {
            return;
        }
        long room = mostBytes() - read.bytes();
        long used = entries.values().stream().mapToLong(Remembered::bytes).sum();
        for (Iterator<Remembered> oldest = entries.values().iterator(); used > room && oldest.hasNext(); ) {
            used -= oldest.next().bytes();
            oldest.remove();
        }
        entries.put(new Reading(documentId, hints), new Remembered(read.bytes(), new SoftReference<>(read)));
    }

    synchronized Optional<PackedEntries> entries(UUID documentId, DocumentHints hints) {
        return Optional.ofNullable(entries.get(new Reading(documentId, hints)))
                .map(remembered -> remembered.entries().get());
    }

    synchronized void forgetAll() {
        entries.clear();
    }

    /** How much of the memory all that is remembered may take. */
    static long mostBytes() {
        return Runtime.getRuntime().maxMemory() / 4;
    }
}
