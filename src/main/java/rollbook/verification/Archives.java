package rollbook.verification;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import rollbook.manifest.ArchiveContents;
import rollbook.manifest.ArchiveFinding;
import rollbook.manifest.ArchiveMember;
import rollbook.manifest.ArchiveReader;
import rollbook.manifest.ManifestArchive;
import rollbook.manifest.ManifestException;

/**
 * Opens archives: every manifest inside becomes a document of its own, sent by the same person at the same moment for
 * the same thing, and waits to be read. The archive itself stays as it was sent.
 */
@Component
class Archives {
    private static final int LONGEST_PATH = 1_000;

    private final JdbcClient jdbc;
    private final DocumentContent content;
    private final SchedulerClient jobs;
    private final Clock clock;

    Archives(JdbcClient jdbc, DocumentContent content, SchedulerClient jobs, Clock clock) {
        this.jdbc = jdbc;
        this.content = content;
        this.jobs = jobs;
        this.clock = clock;
    }

    boolean isArchive(UUID documentId) throws IOException {
        try (InputStream in = content.open(documentId)) {
            return ManifestArchive.beginsLikeOne(in.readNBytes(4));
        }
    }

    /** All of it or nothing. Doing it again is harmless. */
    @Transactional(rollbackFor = Exception.class)
    public void open(UUID productionId, UUID archiveId) throws IOException, ManifestException {
        boolean waits = jdbc.sql(
                        "select document_id from verification_reading where document_id = ? and state in ('WAITING', 'READING') for update")
                .param(archiveId)
                .query(UUID.class)
                .optional()
                .isPresent();
        if (!waits) {
            return;
        }
        try (DocumentChannel channel = new DocumentChannel(content, archiveId)) {
            ManifestArchive archive = ManifestArchive.open(channel);
            ArchiveContents contents = ArchiveReader.read(archive);
            Map<String, UUID> firstOfBag = new HashMap<>();
            int position = 0;
            for (ArchiveMember member : contents.members()) {
                position++;
                Kept kept = member.isThere() ? keep(productionId, archiveId, archive, member, position) : null;
                UUID speaksWith = kept == null || member.bag() == null
                        ? null
                        : firstOfBag.computeIfAbsent(member.bag(), any -> kept.documentId());
                add(productionId, archiveId, position, member, kept, speaksWith);
            }
            position = 0;
            for (ArchiveFinding finding : contents.findings()) {
                add(productionId, archiveId, position++, finding);
            }
            finish(archiveId, contents);
        }
    }

    private record Kept(UUID documentId, boolean wasHere) {}

    private Kept keep(UUID productionId, UUID archiveId, ManifestArchive archive, ArchiveMember member, int sequence)
            throws IOException, ManifestException {
        byte[] sha256 = archive.read(member.path(), Archives::sha256);
        UUID here = jdbc.sql("select id from verification_document where production_id = ? and sha256 = ?")
                .params(productionId, sha256)
                .query(UUID.class)
                .optional()
                .orElse(null);
        if (here != null) {
            return new Kept(here, true);
        }
        UUID id = UUID.randomUUID();
        DocumentContent.Stored stored = archive.read(member.path(), in -> content.write(id, in, chunk -> {}));
        jdbc.sql("""
                        insert into verification_document (id, production_id, sha256, file_name, size_bytes, uploaded_at,
                            uploaded_by, said_subject, said_item_id, sequence)
                        select ?, production_id, ?, ?, ?, uploaded_at, uploaded_by, said_subject, said_item_id, ?
                        from verification_document where id = ?
                        """)
                .params(id, stored.sha256(), DocumentName.shown(member.path()), stored.sizeBytes(), sequence, archiveId)
                .update();
        jdbc.sql("insert into verification_reading (document_id, production_id, state) values (?, ?, 'WAITING')")
                .params(id, productionId)
                .update();
        jobs.scheduleIfNotExists(DocumentReading.TASK.instance(id.toString()).build(), clock.instant());
        return new Kept(id, false);
    }

    private static byte[] sha256(InputStream in) throws IOException {
        MessageDigest sha256 = DocumentContent.sha256();
        new DigestInputStream(in, sha256).transferTo(OutputStream.nullOutputStream());
        return sha256.digest();
    }

    private void add(
            UUID productionId,
            UUID archiveId,
            int position,
            ArchiveMember member,
            @Nullable Kept kept,
            @Nullable UUID speaksWith) {
        jdbc.sql("""
                        insert into verification_archive_member (production_id, archive_id, position, member_id, path, generation,
                            state, was_here, speaks_with, plain_percents)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .param(productionId)
                .param(archiveId)
                .param(position)
                .param(kept == null ? null : kept.documentId())
                .param(shown(member.path()))
                .param(member.generation())
                .param(member.state().name())
                .param(kept != null && kept.wasHere())
                .param(speaksWith)
                .param(member.plainPercents())
                .update();
    }

    private void add(UUID productionId, UUID archiveId, int position, ArchiveFinding finding) {
        String[] names = finding.names().stream().map(Archives::shown).toArray(String[]::new);
        jdbc.sql("""
                        insert into verification_archive_finding (archive_id, position, production_id, weight, message_key, count, names)
                        values (?, ?, ?, ?, ?, ?, ?)
                        """)
                .param(archiveId)
                .param(position)
                .param(productionId)
                .param(finding.weight().name())
                .param(finding.messageKey())
                .param(finding.count())
                .param(names)
                .update();
    }

    private static String shown(String text) {
        String exact = DocumentName.exact(text);
        return exact.length() <= LONGEST_PATH ? exact : exact.substring(0, LONGEST_PATH) + "…";
    }

    private void finish(UUID archiveId, ArchiveContents contents) {
        jdbc.sql("""
                        update verification_reading r set state = 'READ', bytes_read = d.size_bytes, ended_at = ?, format = ?
                        from verification_document d where d.id = r.document_id and r.document_id = ?
                        """)
                .params(Timestamp.from(clock.instant()), contents.format().name(), archiveId)
                .update();
    }
}
