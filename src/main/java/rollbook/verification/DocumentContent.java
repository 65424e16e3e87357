package rollbook.verification;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.Enumeration;
import java.util.List;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.ConnectionCallback;
import org.springframework.jdbc.core.JdbcOperations;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** The bytes of documents, in compressed chunks, so that no document is ever held whole. */
@Repository
class DocumentContent {
    /** Below half of the smallest region of the garbage collector, which handles larger arrays one by one, at length. */
    private static final int CHUNK_BYTES = 448 << 10;

    private final JdbcClient jdbc;
    private final JdbcOperations connections;

    DocumentContent(JdbcClient jdbc, JdbcOperations connections) {
        this.jdbc = jdbc;
        this.connections = connections;
    }

    /** Takes the bytes of a document as they are written, piece by piece; it must not change them. */
    interface Listener {
        void accept(byte[] chunk) throws IOException;
    }

    /** Writes the bytes of a document that the same transaction will insert, and tells their digest and number. */
    @Transactional(propagation = Propagation.MANDATORY)
    Stored write(UUID documentId, InputStream content, Listener listener) throws IOException {
        try {
            return Objects.requireNonNull(connections.execute((ConnectionCallback<Stored>) connection -> {
                try (ChunkCopy copy = new ChunkCopy(connection, documentId)) {
                    return write(copy, content, listener);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private static Stored write(ChunkCopy copy, InputStream content, Listener listener)
            throws IOException, SQLException {
        MessageDigest sha256 = sha256();
        ChunkPacking packing = new ChunkPacking();
        long size = 0;
        for (int position = 0; ; position++) {
            byte[] chunk = nextChunk(content);
            if (chunk.length == 0) {
                copy.end();
                return new Stored(sha256.digest(), size);
            }
            listener.accept(chunk);
            size += chunk.length;
            sha256.update(chunk);
            copy.add(position, chunk.length, packing.pack(chunk));
        }
    }

    private static byte[] nextChunk(InputStream content) throws IOException {
        byte[] chunk = new byte[CHUNK_BYTES];
        int length = content.readNBytes(chunk, 0, CHUNK_BYTES);
        return length == CHUNK_BYTES ? chunk : Arrays.copyOf(chunk, length);
    }

    /** The bytes as they were uploaded; each chunk is fetched when the reader comes to it. */
    InputStream open(UUID documentId) {
        return new SequenceInputStream(new Chunks(documentId));
    }

    /** One piece of the bytes; empty behind the last one. Positions count from 0. */
    Optional<byte[]> chunk(UUID documentId, int position) {
        return jdbc.sql(
                        "select size_bytes, codec, content from verification_document_chunk where document_id = ? and position = ?")
                .params(documentId, position)
                .query((row, number) -> ChunkPacking.unpack(
                        ChunkPacking.Codec.values()[row.getInt("codec")],
                        row.getBytes("content"),
                        row.getInt("size_bytes")))
                .optional();
    }

    /** How many bytes each piece has, in their order. */
    List<Integer> chunkSizes(UUID documentId) {
        return jdbc.sql("select size_bytes from verification_document_chunk where document_id = ? order by position")
                .param(documentId)
                .query(Integer.class)
                .list();
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

    private final class Chunks implements Enumeration<InputStream> {
        private final UUID documentId;
        private int position;
        private byte @Nullable [] next;

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
            byte[] chunk = next;
            if (chunk == null) {
                throw new NoSuchElementException();
            }
            position++;
            next = fetch();
            return new ByteArrayInputStream(chunk);
        }

        private byte @Nullable [] fetch() {
            return chunk(documentId, position).orElse(null);
        }
    }
}
