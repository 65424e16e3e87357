package rollbook.verification;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.io.IOException;
import java.io.InputStream;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.inventory.MediaItems;
import rollbook.manifest.ArchiveMember;
import rollbook.manifest.ManifestFormat;
import rollbook.manifest.ManifestHeader;
import rollbook.manifest.ManifestProblem;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;

/** The documents that people uploaded, kept byte for byte. */
@Service
class Documents {
    static final String DOCUMENTS = """
            select d.id, d.sha256, d.file_name, d.size_bytes, d.uploaded_at, e.display_name as uploaded_by_name,
                   d.said_subject, d.said_item_id, i.code as said_item_code, r.state, r.bytes_read, r.entries, r.ended_at,
                   r.format, r.algorithms, r.basis, r.hash_lists, r.created_on, r.host, r.process, r.comment, r.problem,
                   r.problem_args, r.problem_line, r.problem_column,
                   r.ambiguous_digits,
                   array(select asked.digits from unnest(r.ambiguous_digits) as asked (digits)
                         where not exists (
                             select 1 from verification_algorithm_statement s
                             where s.document_id = d.id and s.digits = asked.digits and s.algorithm is not null
                               and not exists (select 1 from verification_algorithm_statement later
                                   where later.document_id = d.id and later.digits = s.digits and later.id > s.id))) as asked_digits,
                   (select count(*) from verification_part p where p.document_id = d.id) as parts,
                   (select count(*) from verification_part p where p.document_id = d.id
                      and not exists (select 1 from verification_assignment a where a.part_id = p.id)) as unassigned,
                   (select count(*) from verification_archive_member m where m.archive_id = d.id) as members,
                   f.archive_id, f.archive_name, f.generation, f.member_state, d.sequence
            from verification_document d
            join verification_reading r on r.document_id = d.id
            join people_person e on e.id = d.uploaded_by
            left join inventory_item i on i.id = d.said_item_id
            left join lateral (
                select m.archive_id, z.file_name as archive_name, m.generation, m.state as member_state
                from verification_archive_member m join verification_document z on z.id = m.archive_id
                where m.member_id = d.id order by m.id limit 1) f on true
            where d.production_id = :production
            """;

    private final JdbcClient jdbc;
    private final DocumentContent content;
    private final DocumentReader reader;
    private final MediaItems items;
    private final SchedulerClient jobs;
    private final AuditTrail trail;
    private final Clock clock;

    Documents(
            JdbcClient jdbc,
            DocumentContent content,
            DocumentReader reader,
            MediaItems items,
            SchedulerClient jobs,
            AuditTrail trail,
            Clock clock) {
        this.jdbc = jdbc;
        this.content = content;
        this.reader = reader;
        this.items = items;
        this.jobs = jobs;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * Keeps a document and reads it while it arrives. When this returns, the document is safe. A document that is here already
     * changes nothing.
     *
     * @param saidSubject what the uploader says it describes, or null if each document tells for itself
     * @param saidItemId the medium, if it describes a copy
     */
    @Transactional(rollbackFor = Exception.class)
    public Receipt store(
            Membership by, String fileName, InputStream bytes, @Nullable Subject saidSubject, @Nullable UUID saidItemId)
            throws IOException {
        checkMedium(by.productionId(), saidItemId);
        try (DocumentReader.Arrival arrival = reader.arrival(by.productionId(), fileName)) {
            return store(by, fileName, bytes, saidSubject, saidItemId, arrival);
        }
    }

    /** @throws NotFoundException if that is no medium of this production that holds copies */
    void checkMedium(UUID productionId, @Nullable UUID saidItemId) {
        if (saidItemId != null && !items.get(productionId, saidItemId).kind().holdsCopies()) {
            throw new NotFoundException();
        }
    }

    private Receipt store(
            Membership by,
            String fileName,
            InputStream bytes,
            @Nullable Subject saidSubject,
            @Nullable UUID saidItemId,
            DocumentReader.Arrival arrival)
            throws IOException {
        UUID id = UUID.randomUUID();
        DocumentContent.Stored stored = content.write(id, bytes, arrival::accept);
        Optional<UUID> added = jdbc.sql("""
                        insert into verification_document (id, production_id, sha256, file_name, size_bytes, uploaded_at,
                            uploaded_by, said_subject, said_item_id)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?) on conflict (production_id, sha256) do nothing returning id
                        """)
                .param(id)
                .param(by.productionId())
                .param(stored.sha256())
                .param(fileName)
                .param(stored.sizeBytes())
                .param(Timestamp.from(clock.instant()))
                .param(by.personId())
                .param(saidSubject == null ? null : saidSubject.name())
                .param(saidItemId)
                .query(UUID.class)
                .optional();
        if (added.isEmpty()) {
            throw new AlreadyHere(bySha256(by.productionId(), stored.sha256()));
        }
        jdbc.sql("insert into verification_reading (document_id, production_id, state) values (?, ?, 'WAITING')")
                .params(id, by.productionId())
                .update();
        trail.add(
                by.act("document.uploaded", "document", fileName, HexFormat.of().formatHex(stored.sha256())));
        if (!reader.finish(id, arrival)) {
            jobs.scheduleIfNotExists(
                    DocumentReading.TASK.instance(id.toString()).build(), clock.instant());
        }
        return new Receipt(id, fileName, false);
    }

    /** What the uploader is told of a document. */
    record Receipt(UUID documentId, String fileName, boolean wasHere) {}

    /** Rolls back what was written of a document that turns out to be here already. */
    static final class AlreadyHere extends RuntimeException {
        private final transient Document document;

        AlreadyHere(Document document) {
            super(null, null, false, false);
            this.document = document;
        }

        Receipt receipt() {
            return new Receipt(document.id(), document.fileName(), true);
        }
    }

    /** @throws NotFoundException if this production has no such document */
    Document get(UUID productionId, UUID documentId) {
        return jdbc.sql(DOCUMENTS + " and d.id = :id")
                .param("production", productionId)
                .param("id", documentId)
                .query(Documents::document)
                .optional()
                .orElseThrow(NotFoundException::new);
    }

    private Document bySha256(UUID productionId, byte[] sha256) {
        return jdbc.sql(DOCUMENTS + " and d.sha256 = :sha256")
                .param("production", productionId)
                .param("sha256", sha256)
                .query(Documents::document)
                .single();
    }

    List<Document> newest(UUID productionId, long offset, int limit) {
        return jdbc.sql(DOCUMENTS + " order by d.uploaded_at desc, d.sequence, d.id limit :limit offset :offset")
                .param("production", productionId)
                .param("limit", limit)
                .param("offset", offset)
                .query(Documents::document)
                .list();
    }

    /** Those that a person must deal with: rejected ones of the last days aside, those with parts nobody has assigned. */
    List<Document> waitingForPeople(UUID productionId) {
        return jdbc.sql("select * from (" + DOCUMENTS + ") documents where unassigned > 0 order by uploaded_at")
                .param("production", productionId)
                .query(Documents::document)
                .list();
    }

    long count(UUID productionId) {
        return jdbc.sql("select count(*) from verification_document where production_id = ?")
                .param(productionId)
                .query(Long.class)
                .single();
    }

    InputStream open(UUID productionId, UUID documentId) {
        return content.open(get(productionId, documentId).id());
    }

    static Document document(ResultSet row, int number) throws SQLException {
        return new Document(
                row.getObject("id", UUID.class),
                HexFormat.of().formatHex(row.getBytes("sha256")),
                row.getString("file_name"),
                row.getLong("size_bytes"),
                row.getTimestamp("uploaded_at").toInstant(),
                row.getString("uploaded_by_name"),
                named(Subject.class, row.getString("said_subject")),
                row.getObject("said_item_id", UUID.class),
                row.getString("said_item_code"),
                Document.State.valueOf(row.getString("state")),
                row.getLong("bytes_read"),
                row.getLong("entries"),
                instant(row.getTimestamp("ended_at")),
                named(ManifestFormat.class, row.getString("format")),
                row.getString("algorithms"),
                named(ManifestHeader.AlgorithmBasis.class, row.getString("basis")),
                row.getObject("hash_lists", Integer.class),
                instant(row.getTimestamp("created_on")),
                row.getString("host"),
                named(ManifestHeader.Process.class, row.getString("process")),
                row.getString("comment"),
                named(ManifestProblem.class, row.getString("problem")),
                texts(row.getArray("problem_args")),
                row.getObject("problem_line", Long.class),
                row.getObject("problem_column", Integer.class),
                List.of((Integer[]) row.getArray("ambiguous_digits").getArray()),
                List.of((Integer[]) row.getArray("asked_digits").getArray()),
                row.getLong("parts"),
                row.getLong("unassigned"),
                row.getLong("members"),
                archivedIn(row));
    }

    private static Document.@Nullable ArchivedIn archivedIn(ResultSet row) throws SQLException {
        UUID archiveId = row.getObject("archive_id", UUID.class);
        return archiveId == null
                ? null
                : new Document.ArchivedIn(
                        archiveId,
                        row.getString("archive_name"),
                        row.getObject("generation", Integer.class),
                        ArchiveMember.State.valueOf(row.getString("member_state")));
    }

    private static <E extends Enum<E>> @Nullable E named(Class<E> type, @Nullable String name) {
        return name == null ? null : Enum.valueOf(type, name);
    }

    private static @Nullable Instant instant(@Nullable Timestamp timestamp) {
        return timestamp == null ? null : timestamp.toInstant();
    }

    private static List<String> texts(@Nullable Array array) throws SQLException {
        return array == null ? List.of() : List.of((String[]) array.getArray());
    }
}
