package rollbook.verification;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.production.Membership;

/** Documents that were kept but not read, as when the program fails to read one while it arrives. */
record UnreadDocuments(
        JdbcClient jdbc, DocumentContent content, SchedulerClient jobs, TransactionTemplate transaction) {

    UUID store(Membership by, @Nullable Subject said, String name, String text) {
        UUID id = UUID.randomUUID();
        transaction.executeWithoutResult(status -> {
            DocumentContent.Stored stored = write(id, text);
            jdbc.sql("""
                            insert into verification_document (id, production_id, sha256, file_name, size_bytes, uploaded_at,
                                uploaded_by, said_subject)
                            values (?, ?, ?, ?, ?, now(), ?, ?)
                            """)
                    .param(id)
                    .param(by.productionId())
                    .param(stored.sha256())
                    .param(name)
                    .param(stored.sizeBytes())
                    .param(by.personId())
                    .param(said == null ? null : said.name())
                    .update();
            jdbc.sql("insert into verification_reading (document_id, production_id, state) values (?, ?, 'WAITING')")
                    .params(id, by.productionId())
                    .update();
            jobs.scheduleIfNotExists(
                    DocumentReading.TASK.instance(id.toString()).build(), Instant.now());
        });
        return id;
    }

    private DocumentContent.Stored write(UUID id, String text) {
        try {
            return content.write(id, new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), chunk -> {});
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
