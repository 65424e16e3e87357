package rollbook.verification;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.manifest.Verdict;
import rollbook.production.Membership;
import rollbook.web.Refusal;

/** What only a document's own page shows, and reading it again. */
@Service
class DocumentDetails {
    private final JdbcClient jdbc;
    private final Documents documents;
    private final DocumentNotes notes;
    private final SchedulerClient jobs;
    private final AuditTrail trail;
    private final Clock clock;

    DocumentDetails(
            JdbcClient jdbc,
            Documents documents,
            DocumentNotes notes,
            SchedulerClient jobs,
            AuditTrail trail,
            Clock clock) {
        this.jdbc = jdbc;
        this.documents = documents;
        this.notes = notes;
        this.jobs = jobs;
        this.trail = trail;
        this.clock = clock;
    }

    /**
     * @param sentName the whole name that it was first sent under, or null if that isn't known
     * @param excerpt the lines around the place where it could not be understood, if it couldn't
     */
    record Details(@Nullable String sentName, @Nullable Excerpt excerpt, List<DocumentNote> notes) {
        public List<DocumentNote> facts() {
            return notes(DocumentNote.Kind.FACT);
        }

        public List<DocumentNote> remarks() {
            return notes(DocumentNote.Kind.REMARK);
        }

        private List<DocumentNote> notes(DocumentNote.Kind kind) {
            return notes.stream().filter(note -> note.kind() == kind).toList();
        }
    }

    Details details(UUID productionId, UUID documentId) {
        List<DocumentNote> noted = notes.of(productionId, documentId);
        return jdbc.sql("""
                        select (select f.sent_name from verification_delivery f
                                where f.document_id = r.document_id and f.outcome = 'STORED' order by f.id limit 1) as sent_name,
                               r.excerpt, r.excerpt_first_line, r.excerpt_caret, r.problem_line
                        from verification_reading r where r.production_id = ? and r.document_id = ?
                        """)
                .params(productionId, documentId)
                .query((row, number) -> new Details(row.getString("sent_name"), excerpt(row), noted))
                .single();
    }

    private static @Nullable Excerpt excerpt(ResultSet row) throws SQLException {
        Array lines = row.getArray("excerpt");
        long first = row.getLong("excerpt_first_line");
        return lines == null
                ? null
                : new Excerpt(
                        List.of((String[]) lines.getArray()),
                        first,
                        Math.toIntExact(row.getLong("problem_line") - first),
                        row.getInt("excerpt_caret"));
    }

    /**
     * A copy whose newest verdict relies on the document.
     *
     * @param asReference whether the document is what the copy was compared with, rather than what speaks of the copy
     */
    record Judged(UUID rollId, String rollCode, String itemCode, Verdict verdict, boolean asReference) {}

    List<Judged> judged(UUID productionId, UUID documentId) {
        return jdbc.sql("""
                        select r.id as roll_id, r.code as roll_code, i.code as item_code, v.verdict,
                               v.evidence_part_id not in (select id from verification_part where document_id = :document) as as_reference
                        from (select distinct on (copy_id) * from verification_verdict
                              where production_id = :production and copy_id in (
                                  select copy_id from verification_verdict where production_id = :production and (
                                      evidence_part_id in (select id from verification_part where document_id = :document)
                                      or reference_part_id in (select id from verification_part where document_id = :document)))
                              order by copy_id, id desc) v
                        join offload_roll r on r.id = v.roll_id
                        join offload_copy c on c.id = v.copy_id
                        join inventory_item i on i.id = c.item_id
                        where v.evidence_part_id in (select id from verification_part where document_id = :document)
                           or v.reference_part_id in (select id from verification_part where document_id = :document)
                        order by r.code, i.code
                        """)
                .param("production", productionId)
                .param("document", documentId)
                .query(Judged.class)
                .list();
    }

    /**
     * Reads a document once more that was rejected for a fault of this program.
     *
     * @throws Refusal if it wasn't, or somebody else did this just now
     */
    @Transactional
    public void readAgain(Membership by, UUID documentId) {
        Document document = documents.get(by.productionId(), documentId);
        int reset = jdbc.sql("""
                        update verification_reading set state = 'WAITING', bytes_read = 0, entries = 0, ended_at = null
                        where document_id = ? and production_id = ? and state = 'REJECTED' and problem is null
                        """).params(documentId, by.productionId()).update();
        if (reset == 0) {
            throw new Refusal("verification.refused.not-to-read-again", document.fileName());
        }
        trail.add(by.act("document.read-again", "document", document.fileName(), ""));
        jobs.scheduleIfNotExists(
                DocumentReading.TASK.instance(documentId.toString()).build(), clock.instant());
    }
}
