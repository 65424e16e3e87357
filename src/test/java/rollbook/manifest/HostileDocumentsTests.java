package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import rollbook.manifest.HostileDocuments.Document;
import rollbook.manifest.ManifestHeader.Process;

/**
 * At least twenty thousand documents that are broken or made to break a reader: each is refused with a place, or read
 * to something that is safe to keep; none takes long, none leaves memory behind, and none proves a copy that its list
 * doesn't prove.
 */
class HostileDocumentsTests {
    private static final long SEED = 20_261_126;
    private static final Duration MOST_TIME = Duration.ofSeconds(2);
    private static final long MEMORY_LEFT_BEHIND = 24L << 20;
    private static final Pattern UNSAFE =
            Pattern.compile("(?:^|.*/)\\.\\.(?:/.*|$)|^/.*|^[A-Za-z]:[/\\\\].*|.*\\x00.*|^$", Pattern.DOTALL);

    private int documents;
    private int read;
    private final List<String> faults = new ArrayList<>();

    @Test
    @Timeout(value = 10, unit = TimeUnit.MINUTES)
    void everyHostileDocumentIsRefusedWithAPlaceOrReadSafelyAndSoon() {
        HostileDocuments.forEach(SEED, this::take);
        assertThat(faults).as("seed %d, %d documents", SEED, documents).isEmpty();
        assertThat(documents).isGreaterThanOrEqualTo(20_000);
        assertThat(read).as("some are right enough to be read").isBetween(500, documents - 10_000);
    }

    @Test
    @Timeout(value = 10, unit = TimeUnit.MINUTES)
    void noMemoryIsLeftBehind() {
        HostileDocuments.forEach(SEED, document -> outcome(document, new ArrayList<>()));
        long before = used();
        HostileDocuments.forEach(SEED + 1, document -> outcome(document, new ArrayList<>()));
        assertThat(used() - before).isLessThan(MEMORY_LEFT_BEHIND);
    }

    private void take(Document document) {
        documents++;
        List<ManifestEntry> entries = new ArrayList<>();
        long start = cpuNanos();
        String outcome;
        try {
            outcome = outcome(document, entries);
        } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
            faults.add(document.what() + ": " + e);
            return;
        }
        Duration taken = Duration.ofNanos(cpuNanos() - start);
        if (taken.compareTo(MOST_TIME) > 0) {
            faults.add(document.what() + " took " + taken.toMillis() + " ms");
        }
        if (outcome.isEmpty()) {
            read++;
            entries.stream()
                    .filter(entry -> UNSAFE.matcher(entry.path()).matches())
                    .findFirst()
                    .ifPresent(entry -> faults.add(document.what() + ": unsafe path " + entry.path()));
            if (document.bytes() != document.origin()) {
                mustNotProve(document, entries);
            }
        } else if (!outcome.equals("refused")) {
            faults.add(document.what() + ": " + outcome);
        }
    }

    /** Empty if the document was read, else what became of it. */
    private static String outcome(Document document, List<ManifestEntry> entries) {
        try {
            byte[] bytes = document.bytes();
            if (ManifestArchive.beginsLikeOne(bytes)) {
                readArchive(bytes);
            } else {
                long[] count = {0};
                ManifestHeader header = new ManifestReader()
                        .read(new ByteArrayInputStream(bytes), DocumentHints.named(document.fileName()), entry -> {
                            count[0]++;
                            if (entries.size() < 1_000) {
                                entries.add(entry);
                            }
                        });
                if (header.entries() != count[0]) {
                    return "says " + header.entries() + " entries and gave " + count[0];
                }
            }
            return "";
        } catch (ManifestException refusal) {
            boolean placed = refusal.line() > 0 && refusal.column() > 0;
            return placed || refusal.problem().ofArchive() ? "refused" : "refused without a place: " + refusal;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void readArchive(byte[] bytes) throws IOException, ManifestException {
        ManifestArchive archive = ManifestArchive.open(new SeekableInMemoryByteChannel(bytes));
        for (ArchiveMember member : ArchiveReader.read(archive).members()) {
            assertThat(UNSAFE.matcher(member.path()).matches())
                    .as(member.path())
                    .isFalse();
        }
    }

    /** Looks the files up in plain sets, independently of the comparison: proven only if every file is there. */
    private void mustNotProve(Document document, List<ManifestEntry> entries) {
        List<ManifestEntry> original = new ArrayList<>();
        Document sound = new Document("sound", document.fileName(), document.origin());
        if (ManifestArchive.beginsLikeOne(sound.bytes())
                || !outcome(sound, original).isEmpty()) {
            return;
        }
        CopyJudgement judgement = CopyJudgement.judge(
                ReferenceFacts.asRecorded(ReferenceFacts.Origin.CARD, "00"),
                EvidenceFacts.of("01", Process.NONE),
                ManifestComparison.of(FileListing.of(original), FileListing.of(entries)));
        Set<String> digests = new HashSet<>();
        entries.forEach(entry -> entry.checksums().forEach(checksum -> digests.add(bytesOf(checksum))));
        boolean allThere = original.stream()
                .allMatch(
                        entry -> entry.checksums().stream().anyMatch(checksum -> digests.contains(bytesOf(checksum))));
        if (judgement.verdict() == Verdict.PROVEN && !allThere) {
            faults.add(document.what() + " proves what it doesn't list");
        }
    }

    private static String bytesOf(Checksum checksum) {
        return java.util.HexFormat.of().formatHex(checksum.digest());
    }

    /** What this thread has computed, so that a busy machine makes no fault. */
    private static long cpuNanos() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static long used() {
        for (int i = 0; i < 3; i++) {
            System.gc();
        }
        Runtime runtime = Runtime.getRuntime();
        return runtime.totalMemory() - runtime.freeMemory();
    }
}
