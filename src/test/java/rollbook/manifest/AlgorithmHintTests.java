package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.manifest.ChecksumAlgorithm.MD5;
import static rollbook.manifest.ChecksumAlgorithm.SHA1;
import static rollbook.manifest.ChecksumAlgorithm.XXH128;
import static rollbook.manifest.ChecksumAlgorithm.XXH3_64;
import static rollbook.manifest.ChecksumAlgorithm.XXH64;
import static rollbook.manifest.Manifests.EMPTY_MD5;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.manifest.ManifestHeader.AlgorithmBasis;

/**
 * The grounds on which an algorithm is concluded, strongest first: tag, what a person said, file name, empty file,
 * length. The digests of no bytes are those of RFC 1321 A.5 and of the xxHash documents.
 */
class AlgorithmHintTests {
    private static final String EMPTY_XXH128 = "99aa06d3014798d86001c324468d497f";
    private static final String SOME_32 = "0123456789abcdef0123456789abcdef";
    private static final String SOME_16 = "0123456789abcdef";

    @ParameterizedTest
    @CsvSource({
        "d41d8cd98f00b204e9800998ecf8427e, MD5",
        "99aa06d3014798d86001c324468d497f, XXH128",
        "ef46db3751d8e999, XXH64",
        "2d06800538d394c2, XXH3_64",
    })
    void anEmptyFileGivesTheAlgorithmAway(String empty, ChecksumAlgorithm algorithm) throws Exception {
        String other = "0".repeat(empty.length());
        Manifests.Document document = Manifests.read(empty + "  empty\n" + other + "  a\n");

        assertThat(document.entries())
                .allSatisfy(entry -> assertThat(entry.checksums())
                        .singleElement()
                        .matches(Checksum::assumed)
                        .extracting(Checksum::algorithm)
                        .isEqualTo(algorithm));
        assertThat(document.header().algorithms()).containsExactly(algorithm);
        assertThat(document.header().basis()).isEqualTo(AlgorithmBasis.EMPTY_FILE);
        assertThat(document.header().concludedFrom(AlgorithmBasis.EMPTY_FILE)).containsExactly(algorithm);
        assertThat(document.header().ambiguousDigits()).isEmpty();
    }

    @Test
    void whatComesBeforeTheEmptyFileIsRightOnTheNextReading() throws Exception {
        String list = SOME_32 + "  a\n" + EMPTY_XXH128 + "  empty\n";
        Manifests.Document first = Manifests.read(list);

        assertThat(algorithms(first)).containsExactly(MD5, XXH128);
        assertThat(first.header().algorithms()).containsExactly(XXH128);
        assertThat(first.header().basis()).isEqualTo(AlgorithmBasis.EMPTY_FILE);

        Manifests.Document second = read(
                list,
                new DocumentHints(
                        "list.txt", Set.of(), first.header().concludedFrom(AlgorithmBasis.EMPTY_FILE), false));
        assertThat(algorithms(second)).containsExactly(XXH128, XXH128);
        assertThat(second.header()).isEqualTo(first.header());
    }

    @Test
    void emptyFilesOfTwoAlgorithmsSayNothing() throws Exception {
        ManifestHeader header =
                Manifests.read(EMPTY_MD5 + "  a\n" + EMPTY_XXH128 + "  b\n").header();

        assertThat(header.algorithms()).containsExactly(MD5);
        assertThat(header.basis()).isEqualTo(AlgorithmBasis.DIGEST_LENGTH);
        assertThat(header.ambiguousDigits()).containsExactly(32);
    }

    @Test
    void theFileNameIsStrongerThanAnEmptyFile() throws Exception {
        ManifestHeader header =
                Manifests.read(EMPTY_XXH128 + "  a\n", "card.md5").header();

        assertThat(header.concluded()).isEqualTo(Map.of(MD5, AlgorithmBasis.FILE_NAME));
    }

    @Test
    void aPersonIsStrongerThanTheFileNameAndCountsAsStated() throws Exception {
        Manifests.Document document =
                read(SOME_32 + "  a\n", new DocumentHints("card.md5", Set.of(XXH128), Set.of(MD5), false));

        assertThat(document.only().checksums())
                .containsExactly(Checksum.parse(XXH128, SOME_32))
                .noneMatch(Checksum::assumed);
        assertThat(document.header().basis()).isEqualTo(AlgorithmBasis.SAID);
        assertThat(document.header().ambiguousDigits()).isEmpty();
    }

    @Test
    void aTagIsStrongerThanAPerson() throws Exception {
        Manifests.Document document =
                read("MD5 (a) = " + SOME_32, new DocumentHints("a", Set.of(XXH128), Set.of(), false));

        assertThat(document.only().checksums()).containsExactly(Checksum.parse(MD5, SOME_32));
        assertThat(document.header().basis()).isEqualTo(AlgorithmBasis.STATED);
    }

    @Test
    void eachLengthIsConcludedByItself() throws Exception {
        Manifests.Document document = read(
                SOME_32 + "  a\n" + SOME_16 + "  a\n" + "0".repeat(40) + "  a\n",
                new DocumentHints("a.xxh3", Set.of(XXH128), Set.of(), false));

        assertThat(document.header().concluded())
                .isEqualTo(Map.of(
                        XXH128, AlgorithmBasis.SAID,
                        XXH3_64, AlgorithmBasis.FILE_NAME,
                        SHA1, AlgorithmBasis.DIGEST_LENGTH));
        assertThat(document.header().basis()).isEqualTo(AlgorithmBasis.DIGEST_LENGTH);
        assertThat(document.header().ambiguousDigits()).isEmpty();
        assertThat(Manifests.read(SOME_32 + "  a\n" + SOME_16 + "  b\n")
                        .header()
                        .ambiguousDigits())
                .containsExactlyInAnyOrder(16, 32);
    }

    /** A size that isn't zero belies the digest of no bytes. */
    @Test
    void onlyAnEmptyFileCounts() throws Exception {
        ManifestHeader header =
                Manifests.read("path,size,hash\na,1," + EMPTY_XXH128 + "\n").header();

        assertThat(header.basis()).isEqualTo(AlgorithmBasis.DIGEST_LENGTH);
    }

    @Test
    void saysWhatADigestOfSomeLengthMayBe() {
        assertThat(ChecksumAlgorithm.ofHexDigits(32)).containsExactly(MD5, XXH128);
        assertThat(ChecksumAlgorithm.ofHexDigits(16)).containsExactly(XXH64, XXH3_64);
        assertThat(ChecksumAlgorithm.ofHexDigits(128)).containsExactly(ChecksumAlgorithm.SHA512);
        assertThat(ChecksumAlgorithm.ofHexDigits(8)).isEmpty();
        assertThat(ChecksumAlgorithm.ofHexDigits(33)).isEmpty();
    }

    private static List<ChecksumAlgorithm> algorithms(Manifests.Document document) {
        return document.entries().stream()
                .map(entry -> entry.checksums().get(0).algorithm())
                .toList();
    }

    private static Manifests.Document read(String content, DocumentHints hints) throws Exception {
        List<ManifestEntry> entries = new ArrayList<>();
        byte[] bytes = content.getBytes(StandardCharsets.UTF_8);
        ManifestHeader header = new ManifestReader().read(new ByteArrayInputStream(bytes), hints, entries::add);
        return new Manifests.Document(header, entries);
    }
}
