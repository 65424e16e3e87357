package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static rollbook.manifest.ChecksumAlgorithm.C4;
import static rollbook.manifest.ChecksumAlgorithm.MD5;
import static rollbook.manifest.ChecksumAlgorithm.SHA1;
import static rollbook.manifest.ChecksumAlgorithm.SHA256;
import static rollbook.manifest.ChecksumAlgorithm.XXH128;
import static rollbook.manifest.ChecksumAlgorithm.XXH3_64;
import static rollbook.manifest.ChecksumAlgorithm.XXH64;
import static rollbook.manifest.Manifests.digest;
import static rollbook.manifest.Manifests.file;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.xml.sax.SAXException;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.ManifestHeader.Process;

class ManifestWriterTests {
    private static final MhlCreator CREATOR = new MhlCreator(
            Instant.parse("2026-03-04T18:05:12.345Z"),
            "cart <a>",
            "tool & more",
            "0.1 \"b\"",
            "say <hi>",
            Process.TRANSFER);

    @Test
    void writesGnuLists() throws Exception {
        assertThat(gnu(MD5, file("a b", null, digest(MD5, 1)))).isEqualTo("01".repeat(16) + "  a b\n");
        assertThat(gnu(MD5, file("a\\b\nc", null, digest(MD5, 1))))
                .isEqualTo("\\" + "01".repeat(16) + "  a\\\\b\\nc\n");
        assertThat(gnu(XXH3_64, file("a", null, digest(XXH3_64, 1)))).isEqualTo("XXH3_" + "01".repeat(8) + "  a\n");
    }

    @Test
    void writesBsdLists() throws Exception {
        assertThat(bsd(file("a\nb", null, digest(MD5, 1), digest(SHA1, 2))))
                .isEqualTo("\\MD5 (a\\nb) = " + "01".repeat(16) + "\n\\SHA1 (a\\nb) = " + "02".repeat(20) + "\n");
    }

    @Test
    void refusesWhatAFormatCannotSay() {
        ManifestEntry sha256 = file("a", 1L, Action.ORIGINAL, digest(SHA256, 1));
        ManifestEntry control = file("a\u0001", 1L, Action.ORIGINAL, digest(MD5, 1));
        ManifestEntry withoutAction = file("a", 1L, digest(MD5, 1));

        assertThatIllegalArgumentException().isThrownBy(() -> gnu(MD5, sha256));
        assertThatIllegalArgumentException().isThrownBy(() -> bsd(file("a", 1L, digest(C4, 1))));
        assertThatIllegalArgumentException().isThrownBy(() -> writeOnly(sha256));
        assertThatIllegalArgumentException().isThrownBy(() -> writeOnly(control));
        assertThatIllegalArgumentException().isThrownBy(() -> writeOnly(withoutAction));
        assertThatExceptionOfType(IllegalStateException.class).isThrownBy(() -> mhl(List.of()));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new MhlCreator(Instant.EPOCH, "h", "t", "1", null, Process.NONE));
    }

    /** The worked example is valid too, so the schema is known to accept what it should. */
    @Test
    void writesHashListsThatTheSchemaAccepts() throws Exception {
        ManifestEntry all = file(
                "a",
                5L,
                Action.VERIFIED,
                digest(XXH64, 1),
                digest(MD5, 2),
                digest(C4, 3),
                digest(XXH3_64, 4),
                digest(SHA1, 5),
                digest(SHA256, 6),
                digest(XXH128, 7));

        Schemas.validateHashList(Manifests.example(Manifests.FIRST_GENERATION));
        Schemas.validateHashList(Manifests.example(Manifests.SECOND_GENERATION));
        Schemas.validateHashList(mhl(List.of(all, file("b", null, Action.ORIGINAL, digest(MD5, 1)))));
        String wrongOrder = new String(mhl(List.of(all)), StandardCharsets.UTF_8).replace("md5>", "xxh64>");
        assertThatExceptionOfType(SAXException.class)
                .isThrownBy(() -> Schemas.validateHashList(wrongOrder.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void hashListsSayWhoMadeThem() throws Exception {
        ManifestHeader header = Manifests.read(mhl(List.of(file("a", 5L, Action.ORIGINAL, digest(MD5, 1)))), "x.mhl")
                .header();

        assertThat(header.created()).isEqualTo(Instant.parse("2026-03-04T18:05:12Z"));
        assertThat(header.host()).isEqualTo("cart <a>");
        assertThat(header.comment()).isEqualTo("say <hi>");
        assertThat(header.process()).isEqualTo(Process.TRANSFER);
    }

    @Test
    void gnuListsSurviveThereAndBack() throws Exception {
        long seed = 101;
        SplittableRandom random = new SplittableRandom(seed);
        for (ChecksumAlgorithm algorithm : ChecksumAlgorithm.values()) {
            List<ManifestEntry> entries = entries(random, true, Action.NONE, false, algorithm);
            byte[] content = write(ManifestWriter::gnuList, algorithm, entries);
            String name = "list." + algorithm.label().toLowerCase(java.util.Locale.ROOT);
            assertSame(seed, Manifests.read(content, name).entries(), entries);
        }
    }

    @Test
    void bsdListsSurviveThereAndBack() throws Exception {
        long seed = 102;
        SplittableRandom random = new SplittableRandom(seed);
        for (ChecksumAlgorithm algorithm : ChecksumAlgorithm.values()) {
            if (algorithm.tag() != null) {
                List<ManifestEntry> entries = entries(random, true, Action.NONE, false, algorithm);
                byte[] content = write((out, any) -> ManifestWriter.bsdList(out), algorithm, entries);
                assertSame(seed, Manifests.read(content, "list").entries(), entries);
            }
        }
    }

    @Test
    void hashListsSurviveThereAndBack() throws Exception {
        long seed = 103;
        SplittableRandom random = new SplittableRandom(seed);
        for (Action action : List.of(Action.ORIGINAL, Action.VERIFIED, Action.FAILED)) {
            List<ManifestEntry> entries = entries(random, false, action, true, C4, MD5, SHA1, XXH128, XXH3_64, XXH64);
            byte[] content = mhl(entries);
            Schemas.validateHashList(content);
            assertSame(seed, Manifests.read(content, "x.mhl").entries(), entries);
        }
    }

    private static void assertSame(long seed, List<ManifestEntry> read, List<ManifestEntry> written) {
        List<ManifestEntry> withoutLines = read.stream()
                .map(entry -> new ManifestEntry(entry.path(), entry.sizeBytes(), entry.checksums(), entry.action(), 1))
                .toList();
        assertThat(withoutLines).as("seed %d", seed).isEqualTo(written);
    }

    private static List<ManifestEntry> entries(
            SplittableRandom random, boolean control, Action action, boolean sized, ChecksumAlgorithm... algorithms) {
        List<ManifestEntry> entries = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            List<Checksum> checksums = new ArrayList<>();
            for (ChecksumAlgorithm algorithm : algorithms) {
                checksums.add(NastyNames.checksum(random, algorithm));
            }
            Long size = sized ? random.nextLong(Long.MAX_VALUE) : null;
            entries.add(new ManifestEntry(NastyNames.path(random, control), size, checksums, action, 1));
        }
        return entries;
    }

    private interface ListFormat {
        ManifestWriter writer(ByteArrayOutputStream out, ChecksumAlgorithm algorithm);
    }

    private static byte[] write(ListFormat format, ChecksumAlgorithm algorithm, List<ManifestEntry> entries)
            throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ManifestWriter writer = format.writer(out, algorithm)) {
            for (ManifestEntry entry : entries) {
                writer.write(entry);
            }
        }
        return out.toByteArray();
    }

    private static String gnu(ChecksumAlgorithm algorithm, ManifestEntry entry) throws IOException {
        return new String(write(ManifestWriter::gnuList, algorithm, List.of(entry)), StandardCharsets.UTF_8);
    }

    private static String bsd(ManifestEntry entry) throws IOException {
        return new String(
                write((out, any) -> ManifestWriter.bsdList(out), MD5, List.of(entry)), StandardCharsets.UTF_8);
    }

    private static byte[] mhl(List<ManifestEntry> entries) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ManifestWriter writer = ManifestWriter.ascMhl(out, CREATOR)) {
            for (ManifestEntry entry : entries) {
                writer.write(entry);
            }
        }
        return out.toByteArray();
    }

    /** Without completing the document, so that the entry's own refusal is seen. */
    @SuppressWarnings("resource")
    private static void writeOnly(ManifestEntry entry) throws IOException {
        ManifestWriter.ascMhl(new ByteArrayOutputStream(), CREATOR).write(entry);
    }
}
