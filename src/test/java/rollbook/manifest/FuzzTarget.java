package rollbook.manifest;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;

/**
 * What the fuzzer calls: reads the bytes as a document of the kind that the system property {@code fuzz.kind} names and
 * throws an error where a reader breaks its word. Run by {@link ReaderFuzzTests}.
 */
public final class FuzzTarget {
    private static final SoundDocuments.Kind KIND = SoundDocuments.Kind.valueOf(System.getProperty("fuzz.kind"));

    private static final long MOST_NANOS = 2_000_000_000;
    /** The first inputs bring classes in, which the fuzzer then rewrites. */
    private static final int WARM_UP = 1_000;

    private static int inputs;

    private FuzzTarget() {}

    /** The name is the fuzzer's. */
    public static void fuzzerTestOneInput(byte[] input) {
        long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        readOrRefuse(input);
        long nanos = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start;
        require(++inputs < WARM_UP || nanos < MOST_NANOS, "took " + nanos / 1_000_000 + " ms");
    }

    private static void readOrRefuse(byte[] input) {
        try {
            if (ManifestArchive.beginsLikeOne(input)) {
                ArchiveReader.read(ManifestArchive.open(new SeekableInMemoryByteChannel(input)));
            } else if (KIND == SoundDocuments.Kind.CHAIN) {
                MhlChain.read(new ByteArrayInputStream(input));
            } else {
                readTwice(input);
            }
        } catch (ManifestException refusal) {
            require(
                    refusal.problem().ofArchive() || refusal.line() > 0 && refusal.column() > 0,
                    "no place: " + refusal);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void readTwice(byte[] input) throws IOException, ManifestException {
        List<ManifestEntry> first = new ArrayList<>();
        List<ManifestEntry> second = new ArrayList<>();
        ManifestHeader header = new ManifestReader()
                .read(new ByteArrayInputStream(input), DocumentHints.named(KIND.fileName()), first::add);
        new ManifestReader().read(new ByteArrayInputStream(input), DocumentHints.named(KIND.fileName()), second::add);
        require(header.entries() == first.size(), "another number of entries than the header says");
        require(first.equals(second), "read differently the second time");
        for (ManifestEntry entry : first) {
            for (String name : entry.path().split("/", -1)) {
                require(!name.isEmpty() && !name.equals("..") && !name.equals("."), "unsafe: " + entry.path());
            }
            require(entry.path().indexOf('\0') < 0, "NUL in a path");
            require(
                    new String(entry.path().getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8)
                            .equals(entry.path()),
                    "a path that can't be stored");
        }
    }

    private static void require(boolean holds, String otherwise) {
        if (!holds) {
            throw new AssertionError(otherwise);
        }
    }
}
