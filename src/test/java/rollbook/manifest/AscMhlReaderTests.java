package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static rollbook.manifest.Manifests.example;
import static rollbook.manifest.Manifests.read;
import static rollbook.manifest.Manifests.refusal;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.ManifestHeader.Process;

/** Section numbers are those of the ASC MHL specification 1.0 (15 March 2022). */
class AscMhlReaderTests {
    private static final String HASH =
            "<hash><path size=\"3\">a.mxf</path><md5 action=\"original\">900150983cd24fb0d6963f7d28e17f72</md5></hash>";
    private static final String HEAD = "<hashlist xmlns=\"urn:ASC:MHL:v2.0\" version=\"2.0\"><creatorinfo>"
            + "<creationdate>2026-03-04T19:05:12+01:00</creationdate><hostname>cart</hostname><tool>t</tool></creatorinfo>"
            + "<processinfo><process>in-place</process></processinfo>";
    private static final String DOCUMENT = HEAD + "<hashes>" + HASH + "</hashes></hashlist>";

    @Test
    void readsTheFirstGenerationOfTheWorkedExample() throws Exception {
        Manifests.Document document = read(example(Manifests.FIRST_GENERATION), Manifests.FIRST_GENERATION);

        ManifestHeader header = document.header();
        assertThat(header.format()).isEqualTo(ManifestFormat.ASC_MHL);
        assertThat(header.created()).isEqualTo(Instant.parse("2026-03-04T18:05:12Z"));
        assertThat(header.host()).isEqualTo("cart-a.example");
        assertThat(header.comment()).isEqualTo("Copy of card R001 to SHUTTLE_01");
        assertThat(header.process()).isEqualTo(Process.TRANSFER);
        assertThat(header.rootFolder()).isEqualTo("R001_CU01");
        assertThat(header.algorithms()).containsExactly(ChecksumAlgorithm.XXH64);
        assertThat(header.entries()).isEqualTo(3);
        assertThat(document.paths())
                .containsExactly("Clips/R001C001_260304.mxf", "Clips/R001C002_260304.mxf", "R001_report.txt");
        assertThat(document.entries()).allSatisfy(entry -> {
            assertThat(entry.sizeBytes()).isEqualTo(19L);
            assertThat(entry.action()).isEqualTo(Action.ORIGINAL);
        });
    }

    @Test
    void readsTheSecondGenerationOfTheWorkedExample() throws Exception {
        Manifests.Document document = read(example(Manifests.SECOND_GENERATION), Manifests.SECOND_GENERATION);

        assertThat(document.header().algorithms()).isEqualTo(Set.of(ChecksumAlgorithm.MD5, ChecksumAlgorithm.XXH64));
        assertThat(document.entries()).extracting(ManifestEntry::action).containsOnly(Action.VERIFIED);
        assertThat(document.entries().get(0).checksums())
                .containsExactly(
                        Checksum.parse(ChecksumAlgorithm.MD5, "dae42fdab77b704fa13b6fa0f628734e"),
                        Checksum.parse(ChecksumAlgorithm.XXH64, "72dc241b4a0d650d"));
    }

    /** The digests of the example's own payload, computed by the Java platform. */
    @Test
    void theWorkedExampleSpeaksOfItsPayload() throws Exception {
        Manifests.Document document = read(example(Manifests.SECOND_GENERATION), Manifests.SECOND_GENERATION);

        for (ManifestEntry entry : document.entries()) {
            byte[] payload = Manifests.resource(Manifests.EXAMPLE + entry.path());
            byte[] md5 = java.security.MessageDigest.getInstance("MD5").digest(payload);
            assertThat(entry.checksums()).contains(Checksum.of(ChecksumAlgorithm.MD5, md5));
            assertThat(entry.sizeBytes()).isEqualTo(payload.length);
        }
    }

    /** 6.1: prefixes are free. */
    @Test
    void doesNotCareForPrefixes() throws Exception {
        String prefixed =
                DOCUMENT.replace("xmlns=", "xmlns:m=").replace("</", "</m:").replaceAll("<([a-z])", "<m:$1");

        assertThat(read(prefixed).only().path()).isEqualTo("a.mxf");
    }

    /** Appendix D. */
    @Test
    void readsEveryAlgorithmOfTheStandard() throws Exception {
        String digests = "<md5 action=\"original\">40e52b717fab6af085566c769cd9c6ea</md5>"
                + "<sha1 action=\"original\">48146b795eab757a46261b722bf0d8312e113ff8</sha1>"
                + "<c4 action=\"original\">c4137gLfVPqPdRgKr8yXNp1CRgJwSN9Yr4Sh3aaVT6uGmN5GgA7HkHcrTmQxy4t2ZmfWYMqQmF4u7ZRMKtPUM965n2</c4>"
                + "<xxh64 action=\"original\">bca8c0744bf7f78d</xxh64>"
                + "<xxh3 action=\"original\">3ab5a4166b9bde44</xxh3>"
                + "<xxh128 action=\"original\">00fd03cd9996ee8cf8be6a756bf82a42</xxh128>"
                + "<xxh32 action=\"original\">02cc5d05</xxh32>";
        ManifestEntry entry =
                read(DOCUMENT.replaceFirst("<md5.*</md5>", digests)).only();

        assertThat(entry.checksums())
                .extracting(Checksum::algorithm)
                .containsExactly(
                        ChecksumAlgorithm.MD5,
                        ChecksumAlgorithm.SHA1,
                        ChecksumAlgorithm.C4,
                        ChecksumAlgorithm.XXH64,
                        ChecksumAlgorithm.XXH3_64,
                        ChecksumAlgorithm.XXH128);
    }

    /** 6.4.8: white space is kept. */
    @Test
    void keepsWhiteSpaceAndEntitiesOfPaths() throws Exception {
        assertThat(read(DOCUMENT.replace("a.mxf", "  a &amp; b&#10;c<![CDATA[<]]> "))
                        .only()
                        .path())
                .isEqualTo("  a & b\nc< ");
    }

    @Test
    void aFailedDigestSpeaksForTheFile() throws Exception {
        String two = "<md5 action=\"failed\">900150983cd24fb0d6963f7d28e17f72</md5>"
                + "<xxh64 action=\"verified\">bca8c0744bf7f78d</xxh64>";

        assertThat(read(DOCUMENT.replaceFirst("<md5.*</md5>", two)).only().action())
                .isEqualTo(Action.FAILED);
    }

    /** The schema's dateTime allows a date without zone; it is no instant. */
    @Test
    void aDateWithoutZoneNamesNoInstant() throws Exception {
        assertThat(read(DOCUMENT).header().created()).isEqualTo(Instant.parse("2026-03-04T18:05:12Z"));
        assertThat(read(DOCUMENT.replace("+01:00", "")).header().created()).isNull();
    }

    @ParameterizedTest
    @CsvSource({
        "0001_A002R2EC_2019-01-07_080228Z.mhl, A002R2EC", // 6.3
        "0012_R001_CU01_2026-03-05_074000.mhl, R001_CU01",
        "12345_A_2026-03-05_074000Z.mhl, A",
        "day.mhl,",
        "001_A_2026-03-05_074000Z.mhl,",
    })
    void takesTheRootFolderFromTheName(String fileName, String folder) throws Exception {
        assertThat(read(DOCUMENT, fileName).header().rootFolder()).isEqualTo(folder);
    }

    @Test
    void countsReferences() throws Exception {
        String references = "<references><hashlistreference><path>A/ascmhl/1.mhl</path><c4>c4</c4></hashlistreference>"
                + "</references></hashlist>";

        assertThat(read(DOCUMENT.replace("</hashlist>", references)).header().references())
                .isEqualTo(1);
        assertThat(refusal(HEAD + references).problem()).isEqualTo(ManifestProblem.MHL_REFERENCES_ONLY);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "MHL_VERSION | version=\"2.0\" | version=\"2.1\"",
                "MHL_VERSION | version=\"2.0\" | ''",
                "MHL_VERSION | v2.0 | v3.0",
                "MHL_OLD_FORMAT | version=\"2.0\" | version=\"1.1\"",
                "MHL_OLD_FORMAT | xmlns=\"urn:ASC:MHL:v2.0\" | ''",
                "MHL_CHAIN_FILE | urn:ASC:MHL:v2.0 | urn:ASC:MHL:DIRECTORY:v2.0",
                "MHL_NOT_A_HASH_LIST | hashlist | html",
                "MHL_MISSING_ELEMENT | <process>in-place</process> | ''",
                "MHL_MISSING_ELEMENT | <path size=\"3\">a.mxf</path> | ''",
                "MHL_MISSING_ELEMENT | <creationdate>2026-03-04T19:05:12+01:00</creationdate> | ''",
                "MHL_VALUE | in-place | copy",
                "MHL_VALUE | 2026-03-04T19 | 2026-03-04 19",
                "MHL_VALUE | size=\"3\" | size=\"-3\"",
                "MHL_VALUE | size=\"3\" | size=\"99999999999999999999\"",
                "MHL_VALUE | original | new",
                "MHL_UNKNOWN_ELEMENT | hashes> | hushes>",
                "MHL_UNKNOWN_ELEMENT | md5 | sha256",
                "MHL_UNKNOWN_ELEMENT | <hash> | <hash><path>b</path>",
                "MHL_UNKNOWN_ELEMENT | a.mxf | <b>a.mxf</b>",
                "MHL_UNEXPECTED_TEXT | <hash> | hello<hash>",
                "MHL_NO_DIGEST | <md5 action=\"original\">900150983cd24fb0d6963f7d28e17f72</md5> | ''",
                "DIGEST_MALFORMED | e17f72 | e17f7",
                "DIGEST_MALFORMED | e17f72 | e17f7x",
                "PATH_PARENT | a.mxf | ../a.mxf",
                "PATH_ABSOLUTE | a.mxf | /a.mxf",
                "PATH_EMPTY | a.mxf | ''",
                "XML_MALFORMED | a.mxf | &undeclared;",
                "XML_MALFORMED | </hash> | ''",
                "XML_MALFORMED | </hashlist> | </hashlist><more/>",
                "XML_MALFORMED | </hashlist> | ''",
            })
    void refusesWithReason(ManifestProblem problem, String good, String bad) {
        assertThat(DOCUMENT).contains(good);
        ManifestException refusal = refusal(DOCUMENT.replace(good, bad));

        assertThat(refusal.problem()).as(refusal.getMessage()).isEqualTo(problem);
        assertThat(refusal.line()).isEqualTo(1);
        assertThat(refusal.column()).isPositive();
    }

    @Test
    void refusesAListWithoutEntries() {
        assertThat(refusal(HEAD + "<hashes></hashes></hashlist>").problem()).isEqualTo(ManifestProblem.NOTHING_LISTED);
    }

    @Test
    void saysTheLineOfABadDigest() {
        ManifestException refusal = refusal(new String(example(Manifests.FIRST_GENERATION), StandardCharsets.UTF_8)
                .replace("6532dd39691a0392", "6532dd39691a039"));

        assertThat(refusal.problem()).isEqualTo(ManifestProblem.DIGEST_MALFORMED);
        assertThat(refusal.line()).isEqualTo(31);
        assertThat(refusal.arguments()).containsExactly("XXH64", "6532dd39691a039");
    }

    @Test
    void refusesDeclarationsOfEntities() {
        String bomb = "<?xml version=\"1.0\"?><!DOCTYPE hashlist [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]>";
        String external = "<!DOCTYPE hashlist SYSTEM \"file:///etc/hostname\">";

        assertThat(refusal(bomb + DOCUMENT.replace("a.mxf", "&b;")).problem())
                .isEqualTo(ManifestProblem.XML_DECLARATIONS);
        assertThat(refusal(external + DOCUMENT).problem()).isEqualTo(ManifestProblem.XML_DECLARATIONS);
    }

    @Test
    void refusesOtherCodings() {
        assertThat(refusal("<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?>" + DOCUMENT)
                        .problem())
                .isEqualTo(ManifestProblem.XML_ENCODING);
        assertThat(refusal(DOCUMENT.replace("a.mxf", "caf\u00E9").getBytes(StandardCharsets.ISO_8859_1))
                        .problem())
                .isEqualTo(ManifestProblem.XML_MALFORMED);
        assertThat(refusal(DOCUMENT.getBytes(StandardCharsets.UTF_16)).problem())
                .isEqualTo(ManifestProblem.UTF16);
        assertThat(refusal(DOCUMENT.getBytes(StandardCharsets.UTF_16BE)).problem())
                .isEqualTo(ManifestProblem.UTF16);
    }

    @Test
    void refusesEndlessParts() {
        String megabytes = "a".repeat(3_000_000);
        assertThat(refusal(DOCUMENT.replace("a.mxf", megabytes)).problem()).isEqualTo(ManifestProblem.XML_EXCESSIVE);
        assertThat(refusal(DOCUMENT.replace("size=\"3\"", "x=\"" + megabytes + "\""))
                        .problem())
                .isEqualTo(ManifestProblem.XML_EXCESSIVE);
        assertThat(refusal(DOCUMENT.replace("</hashlist>", "<metadata>" + "<a>".repeat(100_000)))
                        .problem())
                .isEqualTo(ManifestProblem.XML_EXCESSIVE);
    }

    @Test
    void aFailingSourceIsNotTheDocumentsFault() {
        IOException fault = new IOException("cable pulled");
        InputStream start = new ByteArrayInputStream(DOCUMENT.substring(0, 200).getBytes(StandardCharsets.UTF_8));
        InputStream broken = new InputStream() {
            @Override
            public int read() throws IOException {
                throw fault;
            }
        };

        assertThatExceptionOfType(IOException.class)
                .isThrownBy(
                        () -> new ManifestReader().read(new SequenceInputStream(start, broken), "a.mhl", entry -> {}));
    }

    @Test
    void aFailingSinkIsNotTheDocumentsFault() {
        EntrySink full = entry -> {
            throw new IllegalStateException("full");
        };

        assertThatExceptionOfType(IllegalStateException.class)
                .isThrownBy(() -> new ManifestReader()
                        .read(new ByteArrayInputStream(DOCUMENT.getBytes(StandardCharsets.UTF_8)), "a.mhl", full));
    }
}
