package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.manifest.ChecksumAlgorithm.C4;
import static rollbook.manifest.ChecksumAlgorithm.MD5;
import static rollbook.manifest.ChecksumAlgorithm.SHA1;
import static rollbook.manifest.ChecksumAlgorithm.XXH128;
import static rollbook.manifest.ChecksumAlgorithm.XXH3_64;
import static rollbook.manifest.ChecksumAlgorithm.XXH64;
import static rollbook.manifest.Manifests.file;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import rollbook.manifest.DirectoryFinding.State;

/** Section numbers are those of the ASC MHL specification 1.0. */
class DirectoryHashesTests {
    /** The Java platform's MD5 of the payload of the standard's published sample documents. */
    private static final List<ManifestEntry> SAMPLE = List.of(
            file("Clips/A002C006_141024_R2EC.mov", 5L, text("abcd\n", MD5), text("abcd\n", XXH64)),
            file("Clips/A002C007_141024_R2EC.mov", 4L, text("def\n", MD5), text("def\n", XXH64)),
            file(
                    "Sidecar.txt",
                    58L,
                    Checksum.parse(MD5, "6425c5a180ca0f420dd2b25be4536a91"),
                    Checksum.parse(XXH64, "3ab5a4166b9bde44")));

    /** The values of the sample documents that were published with the standard. */
    @ParameterizedTest
    @CsvSource({
        "XXH64, 0, 8d02114c32e28cbe, f557f8ca8e5a88ef",
        "XXH64, 1, 4c226b42e27d7af3, 906faa843d591a9f",
        "MD5, 0, 6fae2da9bc6dca45486cb91bfea6db70, be1f2eaed208efbed061845a64cacdfa",
        "MD5, 1, 202a2d71b56b080d9b089c1f4f29a4ba, 4a739024fd19d928e9dea6bb5c480200",
    })
    void computesThePublishedValues(ChecksumAlgorithm algorithm, int directory, String content, String structure) {
        List<DirectoryHash> computed = computed(MhlScope.PLAIN, SAMPLE, algorithm);

        assertThat(computed).extracting(DirectoryHash::path).containsExactly("", "Clips");
        assertThat(computed.get(directory).content()).containsExactly(Checksum.parse(algorithm, content));
        assertThat(computed.get(directory).structure()).containsExactly(Checksum.parse(algorithm, structure));
    }

    /** The worked example's directory hashes were computed apart from this program. */
    @ParameterizedTest
    @CsvSource({Manifests.FIRST_GENERATION + ", 2", Manifests.SECOND_GENERATION + ", 4"})
    void theWorkedExampleAgrees(String generation, int findings) throws Exception {
        List<DirectoryFinding> compared = compare(new String(Manifests.example(generation), StandardCharsets.UTF_8));

        assertThat(compared).hasSize(findings);
        assertThat(compared).extracting(DirectoryFinding::state).containsOnly(State.EQUAL);
    }

    /** Documents from before the standard have this structure for the same content; it is no damage. */
    @Test
    void anotherStructureWithTheSameContentIsToldApart() throws Exception {
        String old = example().replace("ec1bc9dde64d5d27", "ef23ac02467b1720");

        assertThat(compare(old))
                .containsExactly(
                        new DirectoryFinding("", XXH64, State.EQUAL, 11),
                        new DirectoryFinding("Clips", XXH64, State.STRUCTURE_DIFFERS, 33));
    }

    @Test
    void anotherContentIsToldOfEveryDirectoryAboveIt() throws Exception {
        assertThat(states(example().replace("6532dd39691a0392", "6532dd39691a0393")))
                .containsExactly(State.CONTENT_DIFFERS, State.CONTENT_DIFFERS);
        assertThat(states(example().replace("2da8fc0b0100d84e", "2da8fc0b0100d84f")))
                .containsExactly(State.CONTENT_DIFFERS, State.EQUAL);
    }

    /** 6.5.2, implementation guidelines 2.5: renaming changes the structure, not the content. */
    @Test
    void aRenamedFileChangesTheStructureOnly() throws Exception {
        assertThat(states(example().replace("R001C001", "R001C009")))
                .containsExactly(State.STRUCTURE_DIFFERS, State.STRUCTURE_DIFFERS);
        assertThat(states(example().replace("Clips/R001C001", "R001C001")))
                .containsExactly(State.CONTENT_DIFFERS, State.CONTENT_DIFFERS);
    }

    /** Implementation guidelines 2.5.3. */
    @Test
    void withoutADigestOfTheAlgorithmNothingIsSaid() throws Exception {
        String mixed = example()
                .replace(
                        "<xxh64 action=\"original\">6532dd39691a0392</xxh64>",
                        "<md5 action=\"original\">" + Manifests.ABC_MD5 + "</md5>");

        assertThat(states(mixed)).containsExactly(State.NOT_COMPUTABLE, State.NOT_COMPUTABLE);
    }

    @Test
    void whatIsLeftOutTakesNoPart() throws Exception {
        String extra = "<hash><path>%s</path><xxh64 action=\"original\">6532dd39691a0399</xxh64></hash></hashes>";

        for (String path : List.of("Clips/.DS_Store", "ascmhl/0001.mhl", "Clips/ascmhl/x/y", "Other/.DS_Store")) {
            assertThat(states(example().replace("</hashes>", extra.formatted(path))))
                    .as(path)
                    .containsOnly(State.EQUAL);
        }
        assertThat(states(example().replace("</hashes>", extra.formatted("Clips/a"))))
                .containsOnly(State.CONTENT_DIFFERS);
    }

    /** 6.5.2, note 1: the folder of an inner history takes part with the hash that is listed for it. */
    @Test
    void aFolderWithAHistoryOfItsOwnTakesPartAsListed() throws Exception {
        String withoutFiles = example().replaceAll("(?s)<hash>\\s*<path[^>]*>Clips/.*?</hash>", "");
        String reference = "<references><hashlistreference><path>Clips/ascmhl/0001.mhl</path><c4>"
                + Manifests.digest(C4, 1).text() + "</c4></hashlistreference></references></hashlist>";
        String inner = withoutFiles.replace("</hashlist>", reference);

        assertThat(states(withoutFiles)).containsExactly(State.EQUAL, State.GIVEN);
        assertThat(states(inner)).containsExactly(State.EQUAL, State.GIVEN);
        assertThat(states(inner.replaceAll("(?s)<directoryhash>.*</directoryhash>", "")))
                .containsExactly(State.NOT_COMPUTABLE);
    }

    /** The standard leaves it open; the digest of nothing is what its rule gives. */
    @Test
    void anEmptyDirectoryHasTheDigestOfNothing() throws Exception {
        String empty = "<directoryhash><path>Empty</path><content><xxh64>ef46db3751d8e999</xxh64></content>"
                + "<structure><xxh64>ef46db3751d8e999</xxh64></structure></directoryhash></hashes>";

        assertThat(compare(example().replace("</hashes>", empty)))
                .contains(new DirectoryFinding("Empty", XXH64, State.EQUAL, 46));
    }

    @Test
    void contentAndStructureMayHaveDifferentAlgorithms() throws Exception {
        String content = example().replaceAll("(?s)<structure>\\s*<xxh64>[^<]*</xxh64>", "<structure>");

        assertThat(states(content)).containsExactly(State.EQUAL, State.EQUAL);
    }

    /** Appendix G in plain words, over whole trees, for every algorithm; and in whatever order files are listed. */
    @ParameterizedTest
    @EnumSource(names = {"MD5", "SHA1", "XXH64", "XXH3_64", "XXH128", "C4"})
    void computesWhatTheRuleSays(ChecksumAlgorithm algorithm) {
        long seed = 241;
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 40; round++) {
            Map<String, byte[]> tree = new TreeMap<>();
            for (int i = 1 + random.nextInt(30); i > 0; i--) {
                String path = "d".repeat(random.nextInt(3)) + random.nextInt(3) + "/" + NastyNames.path(random, false);
                tree.put(path, NastyNames.checksum(random, algorithm).digest());
            }
            List<ManifestEntry> entries = new ArrayList<>();
            tree.forEach((path, digest) -> entries.add(file(path, null, Checksum.of(algorithm, digest))));
            Collections.shuffle(entries, new Random(random.nextLong()));
            DirectoryHash root = computed(MhlScope.PLAIN, entries, algorithm).get(0);
            String which = "seed %d, round %d".formatted(seed, round);
            assertThat(root.content().get(0).digest()).as(which).isEqualTo(rule(algorithm, tree, false));
            assertThat(root.structure().get(0).digest()).as(which).isEqualTo(rule(algorithm, tree, true));
        }
    }

    @Test
    void whatIsComputedIsFoundEqualWhenItIsListed() throws Exception {
        MhlScope scope = new MhlScope(null, List.of(".DS_Store", "ascmhl/"), List.of());
        ChecksumAlgorithm[] algorithms = {MD5, SHA1, XXH64, XXH3_64, XXH128, C4};
        SplittableRandom random = new SplittableRandom(242);
        List<ManifestEntry> entries = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            Checksum[] checksums = Arrays.stream(algorithms)
                    .map(algorithm -> NastyNames.checksum(random, algorithm))
                    .toArray(Checksum[]::new);
            entries.add(file(NastyNames.path(random, false), 1L, ManifestEntry.Action.ORIGINAL, checksums));
        }
        List<DirectoryHash> hashes = computed(scope, entries, algorithms);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        MhlScope full = new MhlScope(hashes.get(0), scope.ignored(), List.of());
        try (ManifestWriter writer = ManifestWriter.ascMhl(out, Manifests.CREATOR, full)) {
            for (ManifestEntry entry : entries) {
                writer.write(entry);
            }
            for (DirectoryHash directory : hashes.subList(1, hashes.size())) {
                writer.write(directory);
            }
        }

        Schemas.validateHashList(out.toByteArray());
        List<DirectoryFinding> findings = compare(out.toString(StandardCharsets.UTF_8));
        assertThat(findings).hasSize(hashes.size() * algorithms.length);
        assertThat(findings).extracting(DirectoryFinding::state).containsOnly(State.EQUAL);
    }

    @Test
    void absurdlyDeepOrManyDirectoriesAreNotComputed() throws Exception {
        String entry = "<hash><path>%s/b</path><xxh64 action=\"original\">6532dd39691a0399</xxh64></hash>";
        StringBuilder many = new StringBuilder();
        for (int i = 0; i < 1_000; i++) {
            many.append(entry.formatted(i + "/a".repeat(250)));
        }

        for (String hostile : List.of(entry.formatted("a/".repeat(20_000)), many.toString())) {
            assertThat(states(example().replace("</hashes>", hostile + "</hashes>")))
                    .containsExactly(State.NOT_COMPUTABLE, State.NOT_COMPUTABLE);
        }
    }

    private static byte[] rule(ChecksumAlgorithm algorithm, Map<String, byte[]> tree, boolean structure) {
        Map<String, Map<String, byte[]>> directories = new TreeMap<>();
        List<byte[]> digests = new ArrayList<>();
        tree.forEach((path, digest) -> {
            int slash = path.indexOf('/');
            if (slash < 0) {
                digests.add(structure ? named(algorithm, path, digest) : digest);
            } else {
                directories
                        .computeIfAbsent(path.substring(0, slash), name -> new TreeMap<>())
                        .put(path.substring(slash + 1), digest);
            }
        });
        directories.forEach((name, inner) -> {
            byte[] digest = rule(algorithm, inner, structure);
            digests.add(structure ? named(algorithm, name, digest) : digest);
        });
        digests.sort(Arrays::compareUnsigned);
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        digests.forEach(all::writeBytes);
        return algorithm.checksumOf(all.toByteArray()).digest();
    }

    private static byte[] named(ChecksumAlgorithm algorithm, String name, byte[] digest) {
        ByteArrayOutputStream both = new ByteArrayOutputStream();
        both.writeBytes(name.getBytes(StandardCharsets.UTF_8));
        both.writeBytes(digest);
        return algorithm.checksumOf(both.toByteArray()).digest();
    }

    private static List<DirectoryHash> computed(
            MhlScope scope, List<ManifestEntry> entries, ChecksumAlgorithm... algorithms) {
        DirectoryHashes hashes = new DirectoryHashes(scope, algorithms);
        entries.forEach(hashes::accept);
        return hashes.computed();
    }

    private static List<DirectoryFinding> compare(String document) throws Exception {
        byte[] content = document.getBytes(StandardCharsets.UTF_8);
        MhlDetails details =
                Objects.requireNonNull(Manifests.read(content, "a.mhl").header().mhl());
        DirectoryHashes hashes = new DirectoryHashes(details);
        new ManifestReader().read(new ByteArrayInputStream(content), "a.mhl", hashes);
        return hashes.compare();
    }

    private static List<State> states(String document) throws Exception {
        return compare(document).stream().map(DirectoryFinding::state).toList();
    }

    private static String example() {
        return new String(Manifests.example(Manifests.FIRST_GENERATION), StandardCharsets.UTF_8);
    }

    private static Checksum text(String text, ChecksumAlgorithm algorithm) {
        return algorithm.checksumOf(text.getBytes(StandardCharsets.US_ASCII));
    }
}
