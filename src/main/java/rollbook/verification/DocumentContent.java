package rollbook.verification;

import com.github.luben.zstd.Zstd;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.Enumeration;
import java.util.NoSuchElementException;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** The bytes of documents, in compressed chunks, so that no document is ever held whole. */
@Repository
class DocumentContent {
    private static final int CHUNK_BYTES = 1 << 20;
    private static final int COMPRESSION_LEVEL = 3;

    private final JdbcClient jdbc;

    DocumentContent(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Writes the bytes of a document that the same transaction will insert, and tells their digest and number. */
    @Transactional(propagation = Propagation.MANDATORY)
    Stored write(UUID documentId, InputStream content) throws IOException {
        MessageDigest sha256 = sha256();
        DigestInputStream in = new DigestInputStream(content, sha256);
        long size = 0;
        for (int position = 0; ; position++) {
            byte[] chunk = in.readNBytes(CHUNK_BYTES);
            if (chunk.length == 0) {
                return new Stored(sha256.digest(), size);
            }
            size += chunk.length;
            jdbc.sql(
                            "insert into verification_document_chunk (document_id, position, size_bytes, content) values (?, ?, ?, ?)")
                    .params(documentId, position, chunk.length, Zstd.compress(chunk, COMPRESSION_LEVEL))
                    .update();
        }
    }

    /** The bytes as they were uploaded; each chunk is fetched when the reader comes to it. */
    InputStream open(UUID documentId) {
        return new SequenceInputStream(new Chunks(documentId));
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    record Stored(byte[] sha256, long sizeBytes) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Stored stored
                    && sizeBytes == stored.sizeBytes
                    && Arrays.equals(sha256, stored.sha256);
        }

        @Override
        public int hashCode() {
            return Arrays.hashCode(sha256);
        }
    }

    private record Chunk(int sizeBytes, byte[] content) {}

    private final class Chunks implements Enumeration<InputStream> {
        private final UUID documentId;
        private int position;
        private @Nullable Chunk next;

        Chunks(UUID documentId) {
            this.documentId = documentId;
            this.next = fetch();
        }

        @Override
        public boolean hasMoreElements() {
            return next != null;
        }

        @Override
        public InputStream nextElement() {
            Chunk chunk = next;
            if (chunk == null) {
                throw new NoSuchElementException();
            }
            position++;
            next = fetch();
            return new ByteArrayInputStream(Zstd.decompress(chunk.content(), chunk.sizeBytes()));
        }

        private @Nullable Chunk fetch() {
            return jdbc.sql(
                            "select size_bytes, content from verification_document_chunk where document_id = ? and position = ?")
                    .params(documentId, position)
                    .query((row, number) -> new Chunk(row.getInt("size_bytes"), row.getBytes("content")))
                    .optional()
                    .orElse(null);
        }
    }
}
