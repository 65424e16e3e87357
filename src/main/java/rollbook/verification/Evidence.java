package rollbook.verification;

import java.io.IOException;
import java.io.InputStream;
import java.time.Instant;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.manifest.FileListing;
import rollbook.manifest.ManifestException;
import rollbook.manifest.ManifestHeader;
import rollbook.manifest.ManifestReader;

/** The parts of documents that speak of a roll, and the files they list. */
@Repository
class Evidence {
    private final JdbcClient jdbc;
    private final DocumentContent content;
    private final AlgorithmStatements algorithms;

    Evidence(JdbcClient jdbc, DocumentContent content, AlgorithmStatements algorithms) {
        this.jdbc = jdbc;
        this.content = content;
        this.algorithms = algorithms;
    }

    /**
     * A part that somebody assigned to a roll's card or to a copy of it.
     *
     * @param statementId the same for documents that are one statement, as the manifests of one bag are; else the
     *     document's own
     * @param copyId null if it describes the card itself
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
            ManifestHeader.Process process,
            Subject subject,
            @Nullable UUID copyId) {}

    /** What speaks of a roll now, in the order in which it was uploaded. */
    List<Piece> ofRoll(UUID productionId, UUID rollId) {
        return jdbc.sql("""
                        select p.id as part_id, d.id as document_id,
                               coalesce((select m.speaks_with from verification_archive_member m
                                         where m.member_id = d.id and m.speaks_with is not null order by m.id limit 1), d.id)
                                 as statement_id,
                               d.sha256, d.file_name, d.uploaded_at, p.folder,
                               not exists (select 1 from verification_part o where o.document_id = d.id and o.id <> p.id) as only_part,
                               r.process, a.subject, a.copy_id
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
                        ManifestHeader.Process.valueOf(row.getString("process")),
                        Subject.valueOf(row.getString("subject")),
                        row.getObject("copy_id", UUID.class)))
                .list();
    }

    /** The files of some parts together, with paths relative to each part's folder. */
    FileListing listing(List<Piece> pieces) throws IOException {
        FileListing listing = new FileListing();
        Map<UUID, List<Piece>> byDocument = pieces.stream()
                .collect(Collectors.groupingBy(Piece::documentId, LinkedHashMap::new, Collectors.toList()));
        for (List<Piece> ofDocument : byDocument.values()) {
            addDocument(ofDocument, listing);
        }
        return listing;
    }

    private void addDocument(List<Piece> pieces, FileListing listing) throws IOException {
        Piece any = pieces.get(0);
        List<PartFilter> filters = filters(pieces);
        try (InputStream in = content.open(any.documentId())) {
            new ManifestReader().read(in, algorithms.hints(any.documentId(), any.fileName()), entry -> {
                for (PartFilter filter : filters) {
                    String path = filter.relative(entry.path());
                    if (path != null) {
                        listing.add(path.equals(entry.path()) ? entry : entry.withPath(path));
                    }
                }
            });
        } catch (ManifestException e) {
            throw new IOException("A document that was read once can't be read again: " + any.documentId(), e);
        }
    }

    private List<PartFilter> filters(List<Piece> pieces) {
        List<String> folders = pieces.get(0).onlyPart()
                ? List.of(pieces.get(0).folder())
                : jdbc.sql("select folder from verification_part where document_id = ?")
                        .param(pieces.get(0).documentId())
                        .query(String.class)
                        .list();
        return pieces.stream()
                .map(piece -> new PartFilter(
                        piece.folder(),
                        folders.stream()
                                .filter(folder -> !folder.equals(piece.folder()))
                                .toList()))
                .toList();
    }

    /** Which paths of a document lie in one of its parts: those in its folder that are in no other part's folder inside it. */
    static final class PartFilter {
        private final String prefix;
        private final List<String> innerPrefixes;

        PartFilter(String folder, List<String> otherFolders) {
            this.prefix = folder.isEmpty() ? "" : folder + "/";
            this.innerPrefixes = otherFolders.stream()
                    .filter(other -> !other.isEmpty() && (other + "/").startsWith(prefix))
                    .map(other -> other + "/")
                    .toList();
        }

        /** The path relative to the part's folder, or null if it isn't in the part. */
        @Nullable
        String relative(String path) {
            if (!path.startsWith(prefix) || innerPrefixes.stream().anyMatch(path::startsWith)) {
                return null;
            }
            return path.substring(prefix.length());
        }
    }
}
