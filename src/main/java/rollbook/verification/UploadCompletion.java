package rollbook.verification;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import java.util.function.Consumer;
import org.springframework.stereotype.Service;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.production.Membership;

/** Makes documents of uploads of which everything is here. */
@Service
class UploadCompletion {
    private final Uploads uploads;
    private final Deliveries deliveries;
    private final TransactionTemplate transaction;

    UploadCompletion(Uploads uploads, Deliveries deliveries, TransactionTemplate transaction) {
        this.uploads = uploads;
        this.deliveries = deliveries;
        this.transaction = transaction;
    }

    /** Does so once, however often it is asked. When this returns COMPLETE, the document is safe. */
    Upload.Outcome complete(Membership by, UUID id) throws IOException {
        try {
            return completing(by, id, upload -> store(by, upload));
        } catch (Documents.AlreadyHere here) {
            // That took everything back, so telling of it needs a transaction of its own.
            return completing(
                    by, id, upload -> deliveries.here(by, upload.deliveryId(), upload.sentName(), upload.said(), here));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private Upload.Outcome completing(Membership by, UUID id, Consumer<Upload> become) {
        return transaction.execute(status -> {
            Upload upload = uploads.hold(by, id).orElse(null);
            if (upload == null) {
                return Upload.Outcome.BUSY;
            }
            if (!upload.complete()) {
                if (upload.keptBytes() < upload.sizeBytes()) {
                    return Upload.Outcome.ELSEWHERE;
                }
                become.accept(upload);
                uploads.completed(id);
            }
            return Upload.Outcome.COMPLETE;
        });
    }

    /** While a document is written, its connection can do nothing else: so the bytes go to a file first, as a form's do. */
    private void store(Membership by, Upload upload) {
        try {
            Path file = Files.createTempFile("rollbook-upload", null);
            try {
                collect(upload.id(), file);
                try (InputStream in = Files.newInputStream(file)) {
                    deliveries.keep(by, upload.deliveryId(), upload.sentName(), in, upload.said());
                }
            } finally {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void collect(UUID id, Path file) throws IOException {
        try (OutputStream out = Files.newOutputStream(file)) {
            for (Upload.Part part : uploads.parts(id)) {
                out.write(uploads.content(id, part.startByte()));
            }
        }
    }
}
