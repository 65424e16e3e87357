package rollbook.verification;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.io.IOException;
import java.io.InputStream;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.manifest.DirectoryFinding;
import rollbook.manifest.DirectoryHashes;
import rollbook.manifest.ManifestException;
import rollbook.manifest.ManifestHeader;
import rollbook.manifest.ManifestReader;
import rollbook.manifest.MhlDetails;

/** Keeps what documents say beside their files. Nothing of it counts as proof. */
@Service
class DocumentNotes {
    private final JdbcClient jdbc;
    private final DocumentContent content;
    private final SchedulerClient jobs;
    private final TransactionTemplate transaction;
    private final Clock clock;

    DocumentNotes(
            JdbcClient jdbc,
            DocumentContent content,
            SchedulerClient jobs,
            TransactionTemplate transaction,
            Clock clock) {
        this.jdbc = jdbc;
        this.content = content;
        this.jobs = jobs;
        this.transaction = transaction;
        this.clock = clock;
    }

    /** Notes what the header of a document says that was just read, and orders the check of its directory hashes. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void add(UUID productionId, UUID documentId, ManifestHeader header) {
        MhlDetails details = header.mhl();
        if (details == null) {
            return;
        }
        insert(productionId, documentId, DocumentNote.of(details));
        if (!details.directoryAlgorithms().isEmpty()) {
            jobs.scheduleIfNotExists(
                    DirectoryChecking.TASK.instance(documentId.toString()).build(), clock.instant());
        }
    }

    private void insert(UUID productionId, UUID documentId, List<DocumentNote> notes) {
        for (DocumentNote note : notes) {
            jdbc.sql(
                            "insert into verification_note (production_id, document_id, kind, message, arguments) values (?, ?, ?, ?, ?)")
                    .param(productionId)
                    .param(documentId)
                    .param(note.kind().name())
                    .param(note.message())
                    .param(note.arguments().toArray(String[]::new))
                    .update();
        }
    }

    List<DocumentNote> of(UUID productionId, UUID documentId) {
        return jdbc.sql("""
                        select kind, message, arguments from verification_note
                        where production_id = ? and document_id = ? order by id
                        """)
                .params(productionId, documentId)
                .query((row, number) -> new DocumentNote(
                        DocumentNote.Kind.valueOf(row.getString("kind")), row.getString("message"), List.of((String[])
                                row.getArray("arguments").getArray())))
                .list();
    }

    private record Source(UUID productionId, String fileName, boolean checked) {}

    /** Recomputes the directory hashes of a document that was read; once is enough. */
    void checkDirectories(UUID documentId) throws IOException {
        Source source =
                jdbc.sql("""
                        select d.production_id, d.file_name,
                               exists (select 1 from verification_note n
                                       where n.document_id = d.id and n.message like 'manifest.directory.%') as checked
                        from verification_document d where d.id = ?
                        """).param(documentId).query(Source.class).optional().orElse(null);
        if (source == null || source.checked()) {
            return;
        }
        List<DirectoryFinding> findings = findings(documentId, source.fileName());
        transaction.executeWithoutResult(
                status -> insert(source.productionId(), documentId, DocumentNote.of(findings)));
    }

    /** The first of two readings tells which algorithms and patterns the second needs. */
    private List<DirectoryFinding> findings(UUID documentId, String fileName) throws IOException {
        ManifestReader reader = new ManifestReader();
        MhlDetails details = details(reader, documentId, fileName);
        if (details == null) {
            return List.of();
        }
        DirectoryHashes hashes = new DirectoryHashes(details);
        try (InputStream in = content.open(documentId)) {
            reader.read(in, fileName, hashes);
        } catch (ManifestException e) {
            throw new IllegalStateException("document " + documentId + " was read before", e);
        }
        return hashes.compare();
    }

    private @Nullable MhlDetails details(ManifestReader reader, UUID documentId, String fileName) throws IOException {
        try (InputStream in = content.open(documentId)) {
            return reader.read(in, fileName, entry -> {}).mhl();
        } catch (ManifestException e) {
            throw new IllegalStateException("document " + documentId + " was read before", e);
        }
    }
}
