package rollbook.verification;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ArchiveMember;
import rollbook.manifest.ManifestFormat;
import rollbook.manifest.ManifestHeader;
import rollbook.manifest.ManifestProblem;

/**
 * An uploaded document and how far it has been read.
 *
 * @param sha256 of its bytes, in lower-case hexadecimal
 * @param saidItemCode the medium that the uploader said it describes
 * @param problem why it was rejected, if it was; null with state REJECTED means that reading it failed for a fault of
 *     this program
 * @param ambiguousDigits the lengths of its digests of which only a person can say which algorithm made them
 * @param askedDigits those of them of which nobody has said it
 * @param parts folders of it that belong to a roll each, or to none
 * @param unassigned parts of it that nobody has assigned yet
 * @param members manifests that it holds, or should, if it is an archive
 * @param archivedIn the first archive that it came in, if it came in any
 */
record Document(
        UUID id,
        String sha256,
        String fileName,
        long sizeBytes,
        Instant uploadedAt,
        String uploadedByName,
        @Nullable Subject saidSubject,
        @Nullable UUID saidItemId,
        @Nullable String saidItemCode,
        State state,
        long bytesRead,
        long entries,
        @Nullable Instant endedAt,
        @Nullable ManifestFormat format,
        @Nullable String algorithms,
        ManifestHeader.@Nullable AlgorithmBasis basis,
        @Nullable Integer hashLists,
        @Nullable Instant createdOn,
        @Nullable String host,
        ManifestHeader.@Nullable Process process,
        @Nullable String comment,
        @Nullable ManifestProblem problem,
        List<String> problemArgs,
        @Nullable Long problemLine,
        @Nullable Integer problemColumn,
        List<Integer> ambiguousDigits,
        List<Integer> askedDigits,
        long parts,
        long unassigned,
        long members,
        @Nullable ArchivedIn archivedIn) {

    /** @param generation its number in an ASC MHL history, if it has one */
    record ArchivedIn(
            UUID archiveId, String archiveName, @Nullable Integer generation, ArchiveMember.State state) {}

    enum State {
        /** Stored; nobody has begun to read it. */
        WAITING,
        READING,
        READ,
        /** Stored, but it can't be understood; it stays on record. */
        REJECTED
    }

    /** Who has to do something about a document. */
    enum Standing {
        /** Somebody must say what parts of it describe. */
        WAITS_FOR_PEOPLE,
        /** It is being read, or will be. */
        BEING_READ,
        ASSIGNED,
        REJECTED
    }

    public boolean isArchive() {
        return format != null && format.isArchive();
    }

    public boolean ended() {
        return state == State.READ || state == State.REJECTED;
    }

    public Standing standing() {
        return switch (state) {
            case WAITING, READING -> Standing.BEING_READ;
            case REJECTED -> Standing.REJECTED;
            case READ -> unassigned > 0 ? Standing.WAITS_FOR_PEOPLE : Standing.ASSIGNED;
        };
    }

    /** Whether reading it failed for a fault of this program, so that it may be read again. */
    public boolean rejectedByFault() {
        return state == State.REJECTED && problem == null;
    }

    public String shortSha256() {
        return sha256.substring(0, 12);
    }
}
