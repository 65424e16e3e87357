package rollbook.verification;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.UUID;
import org.postgresql.PGConnection;
import org.postgresql.copy.CopyIn;

/**
 * Sends a document's chunks to the database one after the other without waiting for an answer to each, so that the
 * server writes one while the next one is packed (PostgreSQL, COPY in its binary format). Nothing else may use the
 * connection meanwhile. Closing it before {@link #end} takes back what was sent.
 */
final class ChunkCopy implements AutoCloseable {
    private static final String COPY = """
            copy verification_document_chunk (document_id, position, size_bytes, codec, content)
            from stdin (format binary)
            """;
    private static final byte[] SIGNATURE = "PGCOPY\n\377\r\n\0".getBytes(StandardCharsets.ISO_8859_1);
    private static final short COLUMNS = 5;
    private static final short NO_MORE_ROWS = -1;
    private static final int UUID_BYTES = 2 * Long.BYTES;
    private static final int ROW_HEAD_BYTES =
            Short.BYTES + COLUMNS * Integer.BYTES + UUID_BYTES + 2 * Integer.BYTES + Short.BYTES;

    private final UUID documentId;
    private final CopyIn copy;

    ChunkCopy(Connection connection, UUID documentId) throws SQLException {
        this.documentId = documentId;
        this.copy = connection.unwrap(PGConnection.class).getCopyAPI().copyIn(COPY);
        // Neither flags nor an extension of the head.
        send(ByteBuffer.allocate(SIGNATURE.length + 2 * Integer.BYTES).put(SIGNATURE));
    }

    /** @param sizeBytes of the chunk before it was packed */
    void add(int position, int sizeBytes, ChunkPacking.Packed packed) throws SQLException {
        byte[] content = packed.content();
        send(ByteBuffer.allocate(ROW_HEAD_BYTES)
                .putShort(COLUMNS)
                .putInt(UUID_BYTES)
                .putLong(documentId.getMostSignificantBits())
                .putLong(documentId.getLeastSignificantBits())
                .putInt(Integer.BYTES)
                .putInt(position)
                .putInt(Integer.BYTES)
                .putInt(sizeBytes)
                .putInt(Short.BYTES)
                .putShort((short) packed.codec().ordinal())
                .putInt(content.length));
        copy.writeToCopy(content, 0, content.length);
    }

    /** Waits until the server has all of it. */
    void end() throws SQLException {
        send(ByteBuffer.allocate(Short.BYTES).putShort(NO_MORE_ROWS));
        copy.endCopy();
    }

    private void send(ByteBuffer bytes) throws SQLException {
        copy.writeToCopy(bytes.array(), 0, bytes.capacity());
    }

    @Override
    public void close() throws SQLException {
        if (copy.isActive()) {
            copy.cancelCopy();
        }
    }
}
