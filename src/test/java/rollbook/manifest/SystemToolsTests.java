package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reads what the system's own checksum tools write, and has them check what is written here. */
class SystemToolsTests {
    private static final List<String> NAMES = List.of(
            "plain.mxf",
            " two  blanks ",
            "back\\slash",
            "back\\nslash",
            "line\nfeed",
            "Caf\u00E9 \u65E5\u672C.mov",
            "(a) = b",
            "#hash",
            "*star",
            "x) = y");

    @TempDir
    Path folder;

    @BeforeEach
    void createFiles() throws IOException {
        for (String name : NAMES) {
            Files.writeString(folder.resolve(name), "content of " + name);
        }
        Files.writeString(folder.resolve("empty"), "");
    }

    @ParameterizedTest
    @CsvSource({
        "md5sum, , MD5",
        "md5sum, --binary, MD5",
        "md5sum, --tag, MD5",
        "md5sum, --zero, MD5",
        "md5sum, --tag --zero, MD5",
        "cksum, -a md5, MD5",
        "cksum, -a sha1 --untagged, SHA1",
        "cksum, -a sha512 --zero, SHA512",
        "shasum, -a 256, SHA256",
        "shasum, -b -a 512, SHA512",
        "sha1sum, , SHA1",
        "sha1sum, --tag, SHA1",
        "sha256sum, , SHA256",
        "sha256sum, --tag, SHA256",
        "sha512sum, , SHA512",
        "sha512sum, --tag, SHA512",
        "xxhsum, , XXH64",
        "xxhsum, --tag, XXH64",
        "xxhsum, -H2, XXH128",
        "xxhsum, -H2 --tag, XXH128",
        "xxhsum, -H3 --tag, XXH3_64",
        "xxhsum, --tag --little-endian, XXH64",
    })
    void readsTheirLists(String tool, String options, ChecksumAlgorithm algorithm) throws Exception {
        byte[] list = run(tool, options);
        // xxhsum escapes names as the others do only since 0.8.2
        boolean escapes = !tool.equals("xxhsum");
        List<String> names = escapes
                ? NAMES
                : NAMES.stream().filter(n -> !n.matches("(?s).*[\\\\\n].*")).toList();
        if (!escapes) {
            list = run(tool, options, names);
        }

        Manifests.Document document = Manifests.read(list, "list." + algorithm.label());

        assertThat(document.header().algorithms()).isEqualTo(Set.of(algorithm));
        List<String> expected = new ArrayList<>(names);
        expected.add("empty");
        assertThat(document.paths()).containsExactlyInAnyOrderElementsOf(expected);
        assertThat(document.entries())
                .filteredOn(entry -> entry.path().equals("empty"))
                .allSatisfy(entry -> assertThat(entry.isEmpty()).isTrue())
                .hasSize(1);
        if (!tool.equals("xxhsum")) {
            assertDigests(document, algorithm);
        }
    }

    /** The files' digests by the Java platform. */
    private void assertDigests(Manifests.Document document, ChecksumAlgorithm algorithm) throws Exception {
        for (ManifestEntry entry : document.entries()) {
            byte[] content = Files.readAllBytes(folder.resolve(entry.path()));
            byte[] digest = MessageDigest.getInstance(algorithm.label()).digest(content);
            assertThat(entry.checksums()).containsExactly(Checksum.of(algorithm, digest));
        }
    }

    /** OpenSSL has a form of its own for tagged lines, and prints the name as it is. */
    @ParameterizedTest
    @CsvSource({"dgst -md5, MD5", "dgst -sha256, SHA256", "dgst -sha512 -r, SHA512", "dgst -sha1 -r, SHA1"})
    void readsWhatOpensslPrints(String options, ChecksumAlgorithm algorithm) throws Exception {
        List<String> command = new ArrayList<>(List.of("openssl"));
        command.addAll(List.of(options.split(" ")));
        command.addAll(List.of("plain.mxf", "(a) = b", "empty"));

        Manifests.Document document = Manifests.read(run(command), "list");

        assertThat(document.paths()).containsExactly("plain.mxf", "(a) = b", "empty");
        assertDigests(document, algorithm);
    }

    @ParameterizedTest
    @CsvSource({
        "cksum, CRC_LIST",
        "sum, CRC_LIST",
        "sum --sysv, CRC_LIST",
        "cksum -a sm3, ALGORITHM_UNSUPPORTED",
        "cksum -a blake2b, ALGORITHM_UNSUPPORTED",
        "openssl dgst -sha3-256, ALGORITHM_UNSUPPORTED",
        "openssl dgst -sha512-256, ALGORITHM_UNSUPPORTED",
        "xxhsum -H0, DIGEST_LENGTH",
        "xxhsum -H0 --tag, ALGORITHM_UNSUPPORTED",
        "shasum -U, NOT_OF_BYTES",
        "shasum -0, NOT_OF_BYTES",
    })
    void refusesWhatTheyPrintOfTooLittle(String command, ManifestProblem problem) throws Exception {
        List<String> words = new ArrayList<>(List.of(command.split(" ")));
        words.add("plain.mxf");

        assertThat(Manifests.refusal(run(words)).problem()).isEqualTo(problem);
    }

    @Test
    void allFormsOfXxhsumSayTheSame() throws Exception {
        List<String> names = List.of("plain.mxf");
        List<Checksum> plain = read(run("xxhsum", "", names)).entries().get(0).checksums();

        for (String options : List.of("--tag", "--tag --little-endian", "-H1")) {
            assertThat(read(run("xxhsum", options, names)).entries().get(0).checksums())
                    .as(options)
                    .isEqualTo(plain);
        }
    }

    @ParameterizedTest
    @CsvSource({"md5sum, MD5", "sha1sum, SHA1", "sha512sum, SHA512"})
    void theyAcceptOurLists(String tool, ChecksumAlgorithm algorithm) throws Exception {
        List<ManifestEntry> entries =
                Manifests.read(run(tool, ""), "list." + algorithm.label()).entries();
        ByteArrayOutputStream gnu = new ByteArrayOutputStream();
        ByteArrayOutputStream bsd = new ByteArrayOutputStream();
        try (ManifestWriter g = ManifestWriter.gnuList(gnu, algorithm);
                ManifestWriter b = ManifestWriter.bsdList(bsd)) {
            for (ManifestEntry entry : entries) {
                g.write(entry);
                b.write(entry);
            }
        }
        for (byte[] list : List.of(gnu.toByteArray(), bsd.toByteArray())) {
            Path file = Files.write(Files.createTempFile("rollbook", ".list"), list);
            run(List.of(tool, "--check", "--strict", "--quiet", file.toString()));
            Files.delete(file);
        }
    }

    private static Manifests.Document read(byte[] list) throws ManifestException {
        return Manifests.read(list, "list.xxh64");
    }

    private byte[] run(String tool, String options) throws Exception {
        return run(tool, options, NAMES);
    }

    private byte[] run(String tool, String options, List<String> names) throws Exception {
        List<String> command = new ArrayList<>(List.of(tool));
        if (options != null && !options.isBlank()) {
            command.addAll(List.of(options.split(" ")));
        }
        command.add("--");
        if (tool.equals("xxhsum")) {
            command.remove("--");
        }
        command.addAll(names);
        command.add("empty");
        return run(command);
    }

    private byte[] run(List<String> command) throws Exception {
        assumeTrue(isInstalled(command.get(0)), command.get(0) + " is not installed");
        ProcessBuilder builder = new ProcessBuilder(command).directory(folder.toFile());
        builder.environment().put("LC_ALL", "C.UTF-8");
        Process process = builder.redirectErrorStream(true).start();
        byte[] output = process.getInputStream().readAllBytes();
        assertThat(process.waitFor(1, TimeUnit.MINUTES)).isTrue();
        assertThat(process.exitValue())
                .as("%s: %s", command, new String(output, StandardCharsets.UTF_8))
                .isZero();
        return output;
    }

    private static boolean isInstalled(String tool) {
        for (String directory : System.getenv("PATH").split(java.io.File.pathSeparator)) {
            if (Files.isExecutable(Path.of(directory, tool))) {
                return true;
            }
        }
        return false;
    }
}
