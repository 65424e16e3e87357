package rollbook.manifest;

import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ManifestEntry.Action;

/** Short forms for the tests of this package. */
final class Manifests {
    static final String EMPTY_MD5 = "d41d8cd98f00b204e9800998ecf8427e";
    static final String ABC_MD5 = "900150983cd24fb0d6963f7d28e17f72";
    static final String EXAMPLE = "/manifest/examples/R001_CU01/";
    static final String FIRST_GENERATION = "0001_R001_CU01_2026-03-04_180512Z.mhl";
    static final String SECOND_GENERATION = "0002_R001_CU01_2026-03-05_074000Z.mhl";

    static final MhlCreator CREATOR = new MhlCreator(
            Instant.parse("2026-03-04T18:05:12.345Z"),
            "cart <a>",
            "tool & more",
            "0.1 \"b\"",
            List.of(new MhlAuthor("A & B", "a@b.example", "+1 \"2\"", "<loader>"), new MhlAuthor("C")),
            "Stage <3>",
            "say <hi>",
            ManifestHeader.Process.TRANSFER);

    private Manifests() {}

    record Document(ManifestHeader header, List<ManifestEntry> entries) {
        ManifestEntry only() {
            if (entries.size() != 1) {
                throw new AssertionError("Expected one entry: " + entries);
            }
            return entries.get(0);
        }

        List<String> paths() {
            return entries.stream().map(ManifestEntry::path).toList();
        }
    }

    static Document read(byte[] content, String fileName) throws ManifestException {
        List<ManifestEntry> entries = new ArrayList<>();
        try {
            ManifestHeader header =
                    new ManifestReader().read(new ByteArrayInputStream(content), fileName, entries::add);
            return new Document(header, entries);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    interface DirectorySink {
        void accept(DirectoryHash directory);
    }

    static ManifestHeader readWithDirectories(byte[] content, String fileName, DirectorySink directories)
            throws ManifestException {
        EntrySink sink = new EntrySink() {
            @Override
            public void accept(ManifestEntry entry) {
                // files are not asked for
            }

            @Override
            public void directory(DirectoryHash directory) {
                directories.accept(directory);
            }
        };
        try {
            return new ManifestReader().read(new ByteArrayInputStream(content), fileName, sink);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Document read(String content, String fileName) throws ManifestException {
        return read(content.getBytes(StandardCharsets.UTF_8), fileName);
    }

    static Document read(String content) throws ManifestException {
        return read(content, "list.txt");
    }

    static ManifestException refusal(byte[] content) {
        ManifestException refusal = catchThrowableOfType(ManifestException.class, () -> read(content, "list.txt"));
        if (refusal == null) {
            throw new AssertionError("Was read: " + new String(content, StandardCharsets.ISO_8859_1));
        }
        return refusal;
    }

    static ManifestException refusal(String content) {
        return refusal(content.getBytes(StandardCharsets.UTF_8));
    }

    static byte[] resource(String name) {
        try (InputStream in = Objects.requireNonNull(Manifests.class.getResourceAsStream(name), name)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static byte[] example(String generation) {
        return resource(EXAMPLE + "ascmhl/" + generation);
    }

    /** A digest of the algorithm in which every byte is the seed. */
    static Checksum digest(ChecksumAlgorithm algorithm, int seed) {
        return Checksum.of(algorithm, bytes(algorithm, seed));
    }

    static Checksum assumed(ChecksumAlgorithm algorithm, int seed) {
        return Checksum.assumed(algorithm, bytes(algorithm, seed));
    }

    static byte[] bytes(ChecksumAlgorithm algorithm, int seed) {
        byte[] digest = new byte[algorithm.digestBytes()];
        java.util.Arrays.fill(digest, (byte) seed);
        return digest;
    }

    static ManifestEntry file(String path, @Nullable Long sizeBytes, Checksum... checksums) {
        return file(path, sizeBytes, Action.NONE, checksums);
    }

    static ManifestEntry file(String path, @Nullable Long sizeBytes, Action action, Checksum... checksums) {
        return new ManifestEntry(path, sizeBytes, List.of(checksums), action, 1);
    }

    static ManifestEntry md5(String path, int seed) {
        return file(path, null, digest(ChecksumAlgorithm.MD5, seed));
    }

    static FileListing listing(ManifestEntry... entries) {
        return FileListing.of(List.of(entries));
    }
}
