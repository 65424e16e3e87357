package rollbook.verification;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** A part of an upload in a file of its own, for as long as it takes to look at it: a slow line holds no memory. */
final class ArrivedPart implements AutoCloseable {
    private static final int BUFFER_BYTES = 64 << 10;

    private final Path file;
    private final int sizeBytes;
    private final byte[] sha256;

    private ArrivedPart(Path file, int sizeBytes, byte[] sha256) {
        this.file = file;
        this.sizeBytes = sizeBytes;
        this.sha256 = sha256;
    }

    /**
     * Takes a part until its end.
     *
     * @param mostBytes that it may have
     * @return null if it has more
     */
    static @Nullable ArrivedPart from(InputStream in, int mostBytes) throws IOException {
        Path file = Files.createTempFile("rollbook-part", null);
        MessageDigest sha256 = DocumentContent.sha256();
        try (OutputStream out = new DigestOutputStream(Files.newOutputStream(file), sha256)) {
            int size = 0;
            byte[] buffer = new byte[BUFFER_BYTES];
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
                size += read;
                if (size > mostBytes) {
                    Files.delete(file);
                    return null;
                }
                out.write(buffer, 0, read);
            }
            return new ArrivedPart(file, size, sha256.digest());
        } catch (IOException | RuntimeException e) {
            Files.deleteIfExists(file);
            throw e;
        }
    }

    int sizeBytes() {
        return sizeBytes;
    }

    byte[] sha256() {
        return sha256.clone();
    }

    /** Whether it is what its sender says; one who says nothing is believed. */
    boolean is(byte @Nullable [] saidSha256) {
        return saidSha256 == null || Arrays.equals(saidSha256, sha256);
    }

    InputStream open() throws IOException {
        return Files.newInputStream(file);
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(file);
    }
}
