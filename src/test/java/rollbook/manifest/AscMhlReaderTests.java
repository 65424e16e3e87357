package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static rollbook.manifest.Manifests.ABC_MD5;
import static rollbook.manifest.Manifests.example;
import static rollbook.manifest.Manifests.read;
import static rollbook.manifest.Manifests.refusal;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
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
    /** Appendix D. */
    private static final String C4 =
            "c4137gLfVPqPdRgKr8yXNp1CRgJwSN9Yr4Sh3aaVT6uGmN5GgA7HkHcrTmQxy4t2ZmfWYMqQmF4u7ZRMKtPUM965n2";

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

    /** 6.4.1: a folder that holds nothing but folders with histories of their own has only references. */
    @Test
    void readsReferences() throws Exception {
        String references = "<references><hashlistreference><path>A/ascmhl/0001.mhl</path><c4>" + C4
                + "</c4></hashlistreference></references></hashlist>";
        MhlReference expected = new MhlReference("A/ascmhl/0001.mhl", Checksum.parse(ChecksumAlgorithm.C4, C4));

        ManifestHeader beside =
                read(DOCUMENT.replace("</hashlist>", references)).header();
        assertThat(beside.references()).isEqualTo(1);
        assertThat(details(beside).scope().references()).containsExactly(expected);
        ManifestHeader alone = read(HEAD + references).header();
        assertThat(alone.entries()).isZero();
        assertThat(details(alone).scope().references()).containsExactly(expected);
        assertThat(refusal(HEAD + references.replace(C4, C4.replace('c', 'C'))).problem())
                .isEqualTo(ManifestProblem.DIGEST_MALFORMED);
        assertThat(refusal(HEAD + references.replace("A/", "../A/")).problem()).isEqualTo(ManifestProblem.PATH_PARENT);
        assertThat(refusal(HEAD + references.replaceAll("<c4>.*</c4>", "")).problem())
                .isEqualTo(ManifestProblem.MHL_MISSING_ELEMENT);
    }

    /** 6.4. */
    @Test
    void keepsWhoMadeIt() throws Exception {
        String people =
                "<tool version=\"0.1\">t</tool><author email=\"a@b.example\" phone=\"1\" role=\"loader\">Ann</author>"
                        + "<author>Ben</author><location>Stage 3</location>";
        MhlDetails details =
                details(read(DOCUMENT.replace("<tool>t</tool>", people)).header());

        assertThat(details.tool()).isEqualTo("t");
        assertThat(details.toolVersion()).isEqualTo("0.1");
        assertThat(details.authors())
                .containsExactly(new MhlAuthor("Ann", "a@b.example", "1", "loader"), new MhlAuthor("Ben"));
        assertThat(details.location()).isEqualTo("Stage 3");
    }

    /** 6.4, 6.5.2. */
    @Test
    void readsDirectoryHashes() throws Exception {
        List<DirectoryHash> directories = new ArrayList<>();
        ManifestHeader header = Manifests.readWithDirectories(
                Manifests.example(Manifests.SECOND_GENERATION), Manifests.SECOND_GENERATION, directories::add);

        assertThat(directories)
                .containsExactly(
                        new DirectoryHash(
                                "",
                                List.of(
                                        parse(ChecksumAlgorithm.MD5, "7341b06337db1692ea28e353845b7544"),
                                        parse(ChecksumAlgorithm.XXH64, "245d2d4e18770aca")),
                                List.of(
                                        parse(ChecksumAlgorithm.MD5, "a4ff6a2f7592b3ae487cd812987e4dd2"),
                                        parse(ChecksumAlgorithm.XXH64, "273ae106b595d68d")),
                                null,
                                11),
                        new DirectoryHash(
                                "Clips",
                                List.of(
                                        parse(ChecksumAlgorithm.MD5, "cef15a1e249192156342331ebc4ba273"),
                                        parse(ChecksumAlgorithm.XXH64, "9c6baa21effa5515")),
                                List.of(
                                        parse(ChecksumAlgorithm.MD5, "b712cf5139681105d95ff316ac0705c9"),
                                        parse(ChecksumAlgorithm.XXH64, "ec1bc9dde64d5d27")),
                                null,
                                37));
        assertThat(details(header).scope().root()).isEqualTo(directories.get(0));
        assertThat(details(header).scope().ignored()).containsExactly(".DS_Store", "ascmhl/");
        assertThat(details(header).directoryAlgorithms())
                .containsExactlyInAnyOrder(ChecksumAlgorithm.MD5, ChecksumAlgorithm.XXH64);
        assertThat(details(header).remarks()).isEmpty();
    }

    /** Appendix B prints a directory with a slash at its end, section 6.5.2 without. */
    @Test
    void aSlashAtTheEndOfADirectoryMeansNothing() throws Exception {
        List<DirectoryHash> directories = new ArrayList<>();
        byte[] document = new String(Manifests.example(Manifests.FIRST_GENERATION), StandardCharsets.UTF_8)
                .replace(">Clips</path>", ">Clips/</path>")
                .getBytes(StandardCharsets.UTF_8);
        Manifests.readWithDirectories(document, "a.mhl", directories::add);

        assertThat(directories).extracting(DirectoryHash::path).containsExactly("", "Clips");
    }

    /** 5.6.6. */
    @Test
    void readsEarlierPathsAndDates() throws Exception {
        String entry = HASH.replace("size=", "lastmodificationdate=\"2026-03-04T16:20:00+01:00\" size=")
                .replace("action", "hashdate=\"2026-03-04T18:00:00Z\" action")
                .replace("</hash>", "<previousPath>Clips/cafe\u0301.mxf</previousPath></hash>");
        String other = entry.replace("a.mxf", "b.mxf").replace("18:00:00Z", "17:59:00Z");
        Manifests.Document document = read(DOCUMENT.replace(HASH, entry + other));

        assertThat(document.entries().get(0).previousPath()).isEqualTo("Clips/caf\u00E9.mxf");
        assertThat(document.entries().get(0).modified()).isEqualTo(Instant.parse("2026-03-04T15:20:00Z"));
        assertThat(details(document.header()).hashedFrom()).isEqualTo(Instant.parse("2026-03-04T17:59:00Z"));
        assertThat(details(document.header()).hashedTo()).isEqualTo(Instant.parse("2026-03-04T18:00:00Z"));
        assertThat(refusal(DOCUMENT.replace(HASH, entry.replace(">Clips/", ">../")))
                        .problem())
                .isEqualTo(ManifestProblem.PATH_PARENT);
    }

    /** What the schemas let through and the text of the standard forbids, where it does no harm. */
    @Test
    void remarksWhatIsWrongAndHarmless() throws Exception {
        String loose = "<hash><path size=\"3\" lastmodificationdate=\"yesterday\">Clips/b.tmp</path><md5>" + ABC_MD5
                + "</md5><xxh32 action=\"original\">02cc5d05</xxh32></hash>"
                + "<directoryhash><path>Clips</path><content><md5>" + ABC_MD5 + "</md5></content><structure/>"
                + "</directoryhash>";
        String document = DOCUMENT.replace(HASH, loose + loose.replace("Clips/b", "Clips/c"))
                .replace("</process>", "</process><ignore><pattern>*.tmp</pattern></ignore>");

        assertThat(details(read(document).header()).remarks())
                .containsExactly(
                        new ManifestRemark(ManifestRemark.Kind.RECORD_IGNORED, 2, 1, "Clips/b.tmp"),
                        new ManifestRemark(ManifestRemark.Kind.ACTION_MISSING, 2, 1, "MD5"),
                        new ManifestRemark(ManifestRemark.Kind.TOO_SHORT, 2, 1, "xxh32"),
                        new ManifestRemark(ManifestRemark.Kind.DATE_UNREADABLE, 2, 1, "yesterday"),
                        new ManifestRemark(ManifestRemark.Kind.DIRECTORY_SETS_DIFFER, 2, 1, "Clips"));
    }

    /** One published schema lets a format stand twice in one entry. */
    @Test
    void aFormatMayStandTwiceOnlyIfItAgrees() throws Exception {
        String md5 = "<md5 action=\"original\">" + ABC_MD5 + "</md5>";

        assertThat(read(DOCUMENT.replace(md5, md5 + md5)).only().checksums()).hasSize(1);
        assertThat(refusal(DOCUMENT.replace(md5, md5 + md5.replace('9', '8'))).problem())
                .isEqualTo(ManifestProblem.MHL_TWO_DIGESTS);
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
                "MHL_MISSING_ELEMENT | <hash> | <directoryhash><content/><structure/></directoryhash><hash>",
                "MHL_MISSING_ELEMENT | <hash> | <directoryhash><path>a</path><content/></directoryhash><hash>",
                "MHL_UNKNOWN_ELEMENT | </process> | </process><roothash><path>a</path></roothash>",
                "MHL_UNKNOWN_ELEMENT | </process> | </process><ignore><glob>a</glob></ignore>",
                "DIGEST_MALFORMED | </process> | </process><roothash><content><md5>0</md5></content></roothash>",
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
        String directory = "<directoryhash><path>a</path><content/><structure/></directoryhash>";
        assertThat(refusal(HEAD + "<hashes>" + directory + "</hashes></hashlist>")
                        .problem())
                .isEqualTo(ManifestProblem.NOTHING_LISTED);
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

    private static Checksum parse(ChecksumAlgorithm algorithm, String text) {
        return Checksum.parse(algorithm, text);
    }

    private static MhlDetails details(ManifestHeader header) {
        return Objects.requireNonNull(header.mhl());
    }
}
