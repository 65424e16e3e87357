package rollbook.verification;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A file as somebody sent it, and what became of it.
 *
 * @param sentName the whole name under which it was sent, with what can't be shown written as numbers
 * @param saidItemCode the medium that the sender said it describes
 * @param documentId null if nothing was stored
 * @param fileName the name under which the document was stored first
 * @param unassigned parts of the document, or of those in it, that nobody has assigned yet
 * @param members manifests in it, if it is an archive
 * @param doubted those of them that are missing, unreadable or not vouched for
 * @param membersWaiting those of them that are still to be read
 * @param knownSo whether the document is known to describe what the sender says now, or the sender says nothing
 */
record DeliveredFile(
        String sentName,
        Instant sentAt,
        @Nullable Subject saidSubject,
        @Nullable String saidItemCode,
        Outcome outcome,
        @Nullable UUID documentId,
        @Nullable String fileName,
        @Nullable String shortSha256,
        @Nullable Instant uploadedAt,
        @Nullable String uploadedByName,
        Document.@Nullable State state,
        long unassigned,
        long members,
        long doubted,
        long membersWaiting,
        boolean knownSo) {

    enum Outcome {
        STORED,
        /** A document with the same bytes was here already; nothing changed. */
        HERE,
        /** Not stored: it holds nothing. */
        EMPTY
    }

    public boolean beingRead() {
        return state == Document.State.WAITING || state == Document.State.READING || membersWaiting > 0;
    }

    public boolean rejected() {
        return state == Document.State.REJECTED;
    }

    /** Whether the document goes by another name than it was sent under now. */
    public boolean renamed() {
        return fileName != null && !fileName.equals(sentName);
    }

    /** Whether it was sent for something else than it was known to describe. */
    public boolean sentForSomethingElse() {
        return outcome == Outcome.HERE && !knownSo;
    }
}
