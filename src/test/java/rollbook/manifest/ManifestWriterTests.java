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
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.xml.sax.SAXException;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.ManifestHeader.Process;

class ManifestWriterTests {
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
        DirectoryHash uneven = new DirectoryHash("d", List.of(digest(MD5, 1)), List.of(digest(SHA1, 1)), null, 1);
        DirectoryHash root = new DirectoryHash("", List.of(digest(MD5, 1)), List.of(digest(MD5, 1)), null, 1);
        assertThatIllegalArgumentException().isThrownBy(() -> mhl(MhlScope.PLAIN, List.of(), List.of(uneven)));
        assertThatIllegalArgumentException().isThrownBy(() -> mhl(MhlScope.PLAIN, List.of(), List.of(root)));
        assertThatIllegalArgumentException().isThrownBy(() -> new MhlScope(uneven, List.of(), List.of()));
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
        MhlDetails details = Objects.requireNonNull(header.mhl());
        assertThat(details.tool()).isEqualTo("tool & more");
        assertThat(details.toolVersion()).isEqualTo("0.1 \"b\"");
        assertThat(details.authors()).isEqualTo(Manifests.CREATOR.authors());
        assertThat(details.location()).isEqualTo("Stage <3>");
        assertThat(details.scope()).isEqualTo(MhlScope.PLAIN);
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
    void nulEndedListsSurviveThereAndBack() throws Exception {
        long seed = 104;
        SplittableRandom random = new SplittableRandom(seed);
        for (ChecksumAlgorithm algorithm : ChecksumAlgorithm.values()) {
            List<ManifestEntry> entries = entries(random, true, Action.NONE, false, algorithm);
            byte[] content = write(ManifestWriter::nulEndedList, algorithm, entries);
            String name = "list." + algorithm.label().toLowerCase(java.util.Locale.ROOT);
            assertSame(seed, Manifests.read(content, name).entries(), entries);
        }
    }

    @Test
    void tablesSurviveThereAndBack() throws Exception {
        long seed = 105;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 10; i++) {
            List<ManifestEntry> entries = entries(random, true, Action.NONE, true, ChecksumAlgorithm.values());
            byte[] content = write(
                    (out, any) -> ManifestWriter.table(out, EnumSet.allOf(ChecksumAlgorithm.class)), MD5, entries);
            assertSame(seed, Manifests.read(content, "list").entries(), entries);
        }
    }

    @Test
    void writesTables() throws Exception {
        assertThat(table(file("a \"b\",c", 5L, digest(MD5, 1)), file("d", null, digest(XXH3_64, 2))))
                .isEqualTo("path,size,MD5,XXH3-64\r\n\"a \"\"b\"\",c\",5," + "01".repeat(16) + ",\r\nd,,,"
                        + "02".repeat(8) + "\r\n");
        assertThatIllegalArgumentException().isThrownBy(() -> table(file("a", 1L, digest(SHA1, 1))));
    }

    /** A cell that begins so is run by spreadsheet programs (from memory); each must come back as it was. */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@a", "\ta", "\ra", "\na", "\uFF1D1", "a\\b", "\\a", "a\\"})
    void noPathOfATableIsAFormulaOrUnclear(String path) throws Exception {
        String written = table(file(path, null, digest(MD5, 1)));

        assertThat(written.lines().skip(1).findFirst().orElse("").replace("\"", ""))
                .startsWith("./");
        assertThat(Manifests.read(written).only().path()).isEqualTo(path);
    }

    private static String table(ManifestEntry... entries) throws IOException {
        return new String(
                write((out, any) -> ManifestWriter.table(out, EnumSet.of(MD5, XXH3_64)), MD5, List.of(entries)),
                StandardCharsets.UTF_8);
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

    /** Root hash, patterns, directories, references, earlier paths and dates. */
    @Test
    void everythingThatAHashListCanSaySurvivesThereAndBack() throws Exception {
        long seed = 104;
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 30; round++) {
            ChecksumAlgorithm[] algorithms = random.nextBoolean()
                    ? new ChecksumAlgorithm[] {MD5}
                    : new ChecksumAlgorithm[] {C4, MD5, SHA1, XXH128, XXH3_64, XXH64};
            DirectoryHash root = random.nextBoolean() ? directory(random, "", null, algorithms) : null;
            List<String> ignored = names(random);
            List<MhlReference> references = names(random).stream()
                    .map(path -> new MhlReference(path, NastyNames.checksum(random, C4)))
                    .toList();
            MhlScope scope = new MhlScope(root, ignored, references);
            List<ManifestEntry> entries = entries(random, false, Action.VERIFIED, true, algorithms).stream()
                    .map(entry -> new ManifestEntry(
                            entry.path(),
                            entry.sizeBytes(),
                            entry.checksums(),
                            entry.action(),
                            1,
                            random.nextBoolean() ? NastyNames.path(random, false) : null,
                            random.nextBoolean()
                                    ? Instant.ofEpochSecond(random.nextLong(0, 4_000_000_000L), random.nextInt(3))
                                    : null))
                    .limit(40)
                    .toList();
            List<DirectoryHash> directories = new ArrayList<>();
            for (String path : names(random)) {
                String previousPath = random.nextBoolean() ? NastyNames.path(random, false) : null;
                directories.add(directory(random, path, previousPath, algorithms));
            }
            byte[] content = mhl(scope, entries, directories);

            Schemas.validateHashList(content);
            List<DirectoryHash> readDirectories = new ArrayList<>();
            ManifestHeader header = Manifests.readWithDirectories(
                    content,
                    "x.mhl",
                    directory -> readDirectories.add(new DirectoryHash(
                            directory.path(),
                            directory.content(),
                            directory.structure(),
                            directory.previousPath(),
                            1)));
            List<DirectoryHash> written = new ArrayList<>(directories);
            if (root != null) {
                written.add(0, root);
            }
            assertThat(readDirectories).as("seed %d", seed).isEqualTo(written);
            MhlScope read = Objects.requireNonNull(header.mhl()).scope();
            assertThat(read.ignored()).as("seed %d", seed).isEqualTo(ignored);
            assertThat(read.references()).as("seed %d", seed).isEqualTo(references);
            assertThat(Manifests.read(content, "x.mhl").entries().stream()
                            .map(entry -> new ManifestEntry(
                                    entry.path(),
                                    entry.sizeBytes(),
                                    entry.checksums(),
                                    entry.action(),
                                    1,
                                    entry.previousPath(),
                                    entry.modified())))
                    .as("seed %d", seed)
                    .isEqualTo(entries);
        }
    }

    private static List<String> names(SplittableRandom random) {
        List<String> names = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            names.add(NastyNames.path(random, false));
        }
        return names;
    }

    private static DirectoryHash directory(
            SplittableRandom random, String path, @Nullable String previousPath, ChecksumAlgorithm... algorithms) {
        List<Checksum> content = new ArrayList<>();
        List<Checksum> structure = new ArrayList<>();
        for (ChecksumAlgorithm algorithm : algorithms) {
            content.add(NastyNames.checksum(random, algorithm));
            structure.add(NastyNames.checksum(random, algorithm));
        }
        return new DirectoryHash(path, content, structure, previousPath, 1);
    }

    private static byte[] mhl(MhlScope scope, List<ManifestEntry> entries, List<DirectoryHash> directories)
            throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ManifestWriter writer = ManifestWriter.ascMhl(out, Manifests.CREATOR, scope)) {
            for (ManifestEntry entry : entries) {
                writer.write(entry);
            }
            for (DirectoryHash directory : directories) {
                writer.write(directory);
            }
        }
        return out.toByteArray();
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
        ManifestWriter writer(ByteArrayOutputStream out, ChecksumAlgorithm algorithm) throws IOException;
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
        try (ManifestWriter writer = ManifestWriter.ascMhl(out, Manifests.CREATOR)) {
            for (ManifestEntry entry : entries) {
                writer.write(entry);
            }
        }
        return out.toByteArray();
    }

    /** Without completing the document, so that the entry's own refusal is seen. */
    @SuppressWarnings("resource")
    private static void writeOnly(ManifestEntry entry) throws IOException {
        ManifestWriter.ascMhl(new ByteArrayOutputStream(), Manifests.CREATOR).write(entry);
    }
}
