package rollbook.verification;

import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.manifest.DocumentHints;
import rollbook.manifest.FileListing;
import rollbook.manifest.ManifestException;
import rollbook.manifest.ManifestHeader;
import rollbook.manifest.ManifestReader;
import rollbook.manifest.PackedEntries;
import rollbook.manifest.PartFilter;

/** The parts of documents that speak of a roll, and the files they list. */
@Repository
class Evidence {
    private final JdbcClient jdbc;
    private final DocumentContent content;
    private final ReadDocuments read;
    private final AlgorithmStatements algorithms;

    Evidence(JdbcClient jdbc, DocumentContent content, ReadDocuments read, AlgorithmStatements algorithms) {
        this.jdbc = jdbc;
        this.content = content;
        this.read = read;
        this.algorithms = algorithms;
    }

    /**
     * A part that somebody assigned to a roll: to its card, a copy of it, its encoded or its decoded files.
     *
     * @param statementId the same for documents that are one statement, as the manifests of one bag are; else the
     *     document's own
     * @param sizeBytes sum of the sizes given, 0 if there are none
     * @param body what the document says of its files, as a {@link rollbook.manifest.BodyFingerprint}
     * @param copyId null if it describes no copy
     */
    record Piece(
            UUID partId,
            UUID documentId,
            UUID statementId,
            String sha256,
            String fileName,
            Instant uploadedAt,
            String folder,
            boolean onlyPart,
            long sizeBytes,
            ManifestHeader.Process process,
            @Nullable Long body,
            Subject subject,
            @Nullable UUID copyId) {

        /** Whether both documents say the same of the same files. */
        boolean hasBodyOf(Piece other) {
            return body != null && body.equals(other.body);
        }
    }

    /** What speaks of a roll now, in the order in which it was uploaded. */
    List<Piece> ofRoll(UUID productionId, UUID rollId) {
        return jdbc.sql("""
                        select p.id as part_id, d.id as document_id,
                               coalesce((select m.speaks_with from verification_archive_member m
                                         where m.member_id = d.id and m.speaks_with is not null order by m.id limit 1), d.id)
                                 as statement_id,
                               d.sha256, d.file_name, d.uploaded_at, p.folder,
                               not exists (select 1 from verification_part o where o.document_id = d.id and o.id <> p.id) as only_part,
                               p.size_bytes, r.process, r.body_fingerprint, a.subject, a.copy_id
                        from verification_assignment a
                        join verification_part p on p.id = a.part_id
                        join verification_document d on d.id = p.document_id
                        join verification_reading r on r.document_id = d.id
                        where a.production_id = ? and a.roll_id = ?
                          and not exists (select 1 from verification_assignment later where later.replaces = a.id)
                        order by d.uploaded_at, d.sequence, d.id, a.id
                        """)
                .params(productionId, rollId)
                .query((row, number) -> new Piece(
                        row.getObject("part_id", UUID.class),
                        row.getObject("document_id", UUID.class),
                        row.getObject("statement_id", UUID.class),
                        HexFormat.of().formatHex(row.getBytes("sha256")),
                        row.getString("file_name"),
                        row.getTimestamp("uploaded_at").toInstant(),
                        row.getString("folder"),
                        row.getBoolean("only_part"),
                        row.getLong("size_bytes"),
                        ManifestHeader.Process.valueOf(row.getString("process")),
                        row.getObject("body_fingerprint", Long.class),
                        Subject.valueOf(row.getString("subject")),
                        row.getObject("copy_id", UUID.class)))
                .list();
    }

    /** The files of some parts together, with paths relative to each part's folder. */
    FileListing listing(List<Piece> pieces) throws IOException {
        if (pieces.size() == 1) {
            return FileListing.of(entries(pieces.get(0)), filter(pieces.get(0)));
        }
        FileListing listing = new FileListing();
        for (Piece piece : pieces) {
            listing.addAll(entries(piece), filter(piece));
        }
        return listing;
    }

    private PackedEntries entries(Piece piece) throws IOException {
        DocumentHints hints = algorithms.hints(piece.documentId(), piece.fileName());
        Optional<PackedEntries> known = read.entries(piece.documentId(), hints);
        if (known.isPresent()) {
            return known.get();
        }
        PackedEntries entries = new PackedEntries();
        try (InputStream in = content.open(piece.documentId())) {
            new ManifestReader().read(in, hints, entries::add);
        } catch (ManifestException e) {
            throw new IOException("A document that was read once can't be read again: " + piece.documentId(), e);
        }
        read.remember(piece.documentId(), hints, entries);
        return entries;
    }

    private PartFilter filter(Piece piece) {
        List<String> otherFolders = piece.onlyPart()
                ? List.of()
                : jdbc.sql("select folder from verification_part where document_id = ? and id <> ?")
                        .params(piece.documentId(), piece.partId())
                        .query(String.class)
                        .list();
        return new PartFilter(piece.folder(), otherFolders);
    }
}
