package rollbook.verification;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.manifest.DocumentHints;
import rollbook.manifest.ManifestException;
import rollbook.manifest.ManifestHeader;
import rollbook.manifest.ManifestHeader.AlgorithmBasis;
import rollbook.manifest.ReadManifest;
import rollbook.manifest.RollPart;
import rollbook.offload.Rolls;

/**
 * Reads a stored document to its end, notes what it says of itself, and divides it into parts, one for each roll's
 * folder. Nothing of a document counts before all of it could be read. Reading it again after a crash is harmless.
 */
@Component
class DocumentReader {
    /** How often progress is noted: often enough for a person to see it move, seldom enough to cost nothing. */
    private static final long PROGRESS_ENTRIES = 20_000;

    private final JdbcClient jdbc;
    private final DocumentContent content;
    private final ReadDocuments remembered;
    private final Rolls rolls;
    private final MediaItems items;
    private final Assignments assignments;
    private final DocumentNotes notes;
    private final Archives archives;
    private final ClipSummaries clips;
    private final TransactionTemplate transaction;
    private final Clock clock;

    DocumentReader(
            JdbcClient jdbc,
            DocumentContent content,
            ReadDocuments remembered,
            Rolls rolls,
            MediaItems items,
            Assignments assignments,
            DocumentNotes notes,
            Archives archives,
            ClipSummaries clips,
            TransactionTemplate transaction,
            Clock clock) {
        this.jdbc = jdbc;
        this.content = content;
        this.remembered = remembered;
        this.rolls = rolls;
        this.items = items;
        this.assignments = assignments;
        this.notes = notes;
        this.archives = archives;
        this.clips = clips;
        this.transaction = transaction;
        this.clock = clock;
    }

    private record Source(
            UUID id,
            UUID productionId,
            String fileName,
            Instant uploadedAt,
            UUID uploadedBy,
            @Nullable String saidSubject,
            @Nullable UUID saidItemId,
            boolean doubted,
            boolean plainPercents) {
        DocumentHints hints() {
            return new DocumentHints(fileName, Set.of(), Set.of(), plainPercents);
        }
    }

    /** @return false if it was read already */
    boolean read(UUID documentId) throws IOException {
        Source source = source(documentId).orElse(null);
        if (source == null) {
            return false;
        }
        if (archives.isArchive(documentId)) {
            openArchive(source);
            return true;
        }
        Map<String, UUID> rollIds = rolls.idsByCode(source.productionId());
        long[] entries = {0};
        try (CountingStream in = new CountingStream(content.open(documentId))) {
            ReadManifest.Known known = clips.known(source.productionId(), rollIds.keySet(), source.uploadedAt());
            ReadManifest manifest = ReadManifest.read(in, source.hints(), known, ReadDocuments.mostBytes(), entry -> {
                if (++entries[0] % PROGRESS_ENTRIES == 0) {
                    progress(documentId, in.count, entries[0]);
                }
            });
            transaction.executeWithoutResult(status -> finish(source, manifest, rollIds));
        } catch (ManifestException e) {
            reject(documentId, e);
        }
        return true;
    }

    /** A document that is read while it arrives, and the rolls that it may speak of. */
    record Arrival(Map<String, UUID> rollIds, ArrivingBytes<ReadManifest> bytes) implements AutoCloseable {
        void accept(byte[] chunk) throws IOException {
            bytes.accept(chunk);
        }

        @Override
        public void close() {
            bytes.close();
        }
    }

    Arrival arrival(UUID productionId, String fileName) {
        Map<String, UUID> rollIds = rolls.idsByCode(productionId);
        ReadManifest.Known known = clips.known(productionId, rollIds.keySet(), clock.instant());
        return new Arrival(
                rollIds,
                new ArrivingBytes<>(in -> ReadManifest.read(
                        in, DocumentHints.named(fileName), known, ReadDocuments.mostBytes(), entry -> {})));
    }

    /**
     * Notes what was read of a document while it arrived, in the transaction that keeps it.
     *
     * @return false if it has yet to be read
     */
    @Transactional(propagation = Propagation.MANDATORY)
    boolean finish(UUID documentId, Arrival arrival) throws IOException {
        try {
            Optional<ReadManifest> manifest = arrival.bytes().finish();
            manifest.ifPresent(read -> finish(source(documentId).orElseThrow(), read, arrival.rollIds()));
            return manifest.isPresent();
        } catch (ManifestException e) {
            if (archives.isArchive(documentId)) {
                return false;
            }
            reject(documentId, e);
            return true;
        }
    }

    /** Empty if the document was read to its end already. */
    private Optional<Source> source(UUID documentId) {
        return jdbc.sql("""
                        select d.id, d.production_id, d.file_name, d.uploaded_at, d.uploaded_by, d.said_subject, d.said_item_id,
                               exists (select 1 from verification_archive_member m
                                       where m.member_id = d.id and not m.was_here and m.state <> 'GOOD') as doubted,
                               exists (select 1 from verification_archive_member m
                                       where m.member_id = d.id and m.plain_percents) as plain_percents
                        from verification_document d join verification_reading r on r.document_id = d.id
                        where d.id = ? and r.state in ('WAITING', 'READING')
                        """).param(documentId).query(Source.class).optional();
    }

    private void openArchive(Source source) throws IOException {
        try {
            archives.open(source.productionId(), source.id());
        } catch (ManifestException e) {
            reject(source.id(), e);
        }
    }

    private void progress(UUID documentId, long bytesRead, long entries) {
        jdbc.sql("update verification_reading set state = 'READING', bytes_read = ?, entries = ? where document_id = ?")
                .params(bytesRead, entries, documentId)
                .update();
    }

    private void finish(Source source, ReadManifest manifest, Map<String, UUID> rollIds) {
        ManifestHeader header = manifest.header();
        int finished = jdbc.sql("""
                        update verification_reading r set state = 'READ', bytes_read = d.size_bytes, entries = :entries, ended_at = :now,
                            format = :format, algorithms = :algorithms, basis = :basis, hash_lists = :hashLists,
                            ambiguous_digits = :ambiguousDigits, empty_file_algorithms = :emptyFileAlgorithms,
                            created_on = :createdOn, host = :host, process = :process, comment = :comment,
                            body_fingerprint = :body
                        from verification_document d
                        where d.id = r.document_id and r.document_id = :id and r.state in ('WAITING', 'READING')
                        """)
                .param("entries", header.entries())
                .param("now", Timestamp.from(clock.instant()))
                .param("format", header.format().name())
                .param("algorithms", algorithms(header))
                .param("basis", header.basis().name())
                .param(
                        "ambiguousDigits",
                        header.ambiguousDigits().stream().sorted().toArray(Integer[]::new))
                .param(
                        "emptyFileAlgorithms",
                        header.concludedFrom(AlgorithmBasis.EMPTY_FILE).stream()
                                .map(Enum::name)
                                .sorted()
                                .toArray(String[]::new))
                .param("hashLists", header.references())
                .param("createdOn", header.created() == null ? null : Timestamp.from(header.created()))
                .param("host", header.host())
                .param("process", header.process().name())
                .param("comment", header.comment())
                .param("body", manifest.body())
                .param("id", source.id())
                .update();
        if (finished == 0) {
            return;
        }
        notes.add(source.productionId(), source.id(), header);
        remembered.remember(source.id(), source.hints(), manifest.entries());
        MediumGuess guess = mediumGuess(source, header);
        int position = 0;
        Map<UUID, UUID> rollByPart = new HashMap<>();
        for (RollPart part : manifest.split().parts()) {
            UUID partId = UUID.randomUUID();
            UUID rollId =
                    part.rollCode() == null ? null : rollIds.get(part.rollCode().toUpperCase(Locale.ROOT));
            addPart(source, partId, position++, part, rollId, guess);
            clips.write(source.productionId(), partId, manifest.summaries().get(part.folder()));
            if (rollId != null) {
                rollByPart.put(partId, rollId);
            }
        }
        // What the archive it came in doesn't vouch for counts only once somebody has looked at it.
        if (source.saidSubject() != null && !source.doubted()) {
            Subject said = Subject.valueOf(source.saidSubject());
            rollByPart.forEach((partId, rollId) -> assignments.assignAsSaid(
                    source.productionId(), source.uploadedBy(), partId, said, rollId, source.saidItemId()));
        }
    }

    private MediumGuess mediumGuess(Source source, ManifestHeader header) {
        List<MediaItem> candidates = items.list(source.productionId());
        return MediumGuess.from(
                candidates.stream()
                        .filter(item -> item.kind().hasCapacity())
                        .collect(Collectors.toMap(
                                MediaItem::code,
                                item -> item.kind().holdsCopies()
                                        ? new MediumGuess(Subject.COPY, item.id())
                                        : new MediumGuess(Subject.CARD, null))),
                source.fileName(),
                header.comment(),
                header.host());
    }

    private void addPart(
            Source source, UUID partId, int position, RollPart part, @Nullable UUID rollId, MediumGuess guess) {
        jdbc.sql("""
                        insert into verification_part (id, production_id, document_id, folder, entries, size_bytes,
                            guess_roll_id, guess_subject, guess_item_id, position)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .param(partId)
                .param(source.productionId())
                .param(source.id())
                .param(part.folder())
                .param(part.files())
                .param(part.sizeBytes())
                .param(rollId)
                .param(guess.subject() == null ? null : guess.subject().name())
                .param(guess.itemId())
                .param(position)
                .update();
    }

    private void reject(UUID documentId, ManifestException reason) throws IOException {
        Excerpt excerpt = null;
        if (!reason.problem().ofArchive()) {
            try (InputStream in = content.open(documentId)) {
                excerpt = Excerpt.around(in, reason.problem(), reason.line(), reason.column());
            }
        }
        jdbc.sql("""
                        update verification_reading set state = 'REJECTED', ended_at = ?, problem = ?, problem_args = ?,
                            problem_line = ?, problem_column = ?, excerpt = ?, excerpt_first_line = ?, excerpt_caret = ?
                        where document_id = ? and state in ('WAITING', 'READING')
                        """)
                .param(Timestamp.from(clock.instant()))
                .param(reason.problem().name())
                .param(reason.arguments().toArray(String[]::new))
                .param(excerpt == null ? null : reason.line())
                .param(excerpt == null ? null : reason.column())
                .param(excerpt == null ? null : excerpt.lines().toArray(String[]::new))
                .param(excerpt == null ? null : excerpt.firstLine())
                .param(excerpt == null ? null : excerpt.caret())
                .param(documentId)
                .update();
    }

    void rejectForFault(UUID documentId) {
        jdbc.sql(
                        "update verification_reading set state = 'REJECTED', ended_at = ? where document_id = ? and state in ('WAITING', 'READING')")
                .params(Timestamp.from(clock.instant()), documentId)
                .update();
    }

    private static String algorithms(ManifestHeader header) {
        return header.algorithms().stream()
                .map(rollbook.manifest.ChecksumAlgorithm::label)
                .sorted()
                .collect(Collectors.joining(", "));
    }

    private static final class CountingStream extends FilterInputStream {
        private long count;

        CountingStream(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int value = super.read();
            count += value < 0 ? 0 : 1;
            return value;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int read = super.read(buffer, offset, length);
            count += Math.max(0, read);
            return read;
        }
    }
}
