package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rollbook.manifest.ArchiveMember.State;

/** Bags as RFC 8493 has them; its sections stand beside the tests. */
class BagTests {
    private static final String DECLARATION = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";
    private static final String ABC = Manifests.ABC_MD5;
    private static final long SEED = 8_493;

    private final Map<String, String> files = new LinkedHashMap<>();

    BagTests() {
        files.put("bagit.txt", DECLARATION);
        files.put("manifest-md5.txt", ABC + "  data/A001/one.mxf\n");
    }

    private Bag read() throws Exception {
        return read("");
    }

    private Bag read(String base) throws Exception {
        Zip zip = new Zip();
        files.forEach((path, content) -> zip.file(base + path, content));
        return new BagReader(zip.open(), base).read();
    }

    private List<BagFinding> findings() throws Exception {
        return findings(read());
    }

    private static List<BagFinding> findings(Bag bag) {
        return bag.findings().stream()
                .map(ArchiveFinding::messageKey)
                .map(key -> BagFinding.valueOf(key.substring("manifest.bag.".length())))
                .toList();
    }

    private static ArchiveFinding finding(Bag bag, BagFinding kind) {
        return bag.findings().stream()
                .filter(one -> one.messageKey().equals(kind.messageKey()))
                .findFirst()
                .orElseThrow(() -> new AssertionError(kind + " not among " + bag.findings()));
    }

    private static String digest(ChecksumAlgorithm algorithm, String content) {
        return algorithm.checksumOf(content.getBytes(StandardCharsets.UTF_8)).text();
    }

    private void tagManifest(String... tagFiles) {
        StringBuilder tags = new StringBuilder();
        for (String file : tagFiles) {
            tags.append(digest(ChecksumAlgorithm.SHA256, files.get(file)))
                    .append("  ")
                    .append(file)
                    .append('\n');
        }
        files.put("tagmanifest-sha256.txt", tags.toString());
    }

    @Test
    void aBagOfDeclarationAndManifestIsCompleteAndItsPayloadIsForTheCopyToProve() throws Exception {
        Bag bag = read("A001_bag/"); // section 3: complete
        assertThat(bag.isComplete()).isTrue();
        assertThat(bag.isUnaltered()).isTrue();
        assertThat(bag.manifests()).containsExactly(Map.entry("A001_bag/manifest-md5.txt", State.GOOD));
        assertThat(findings(bag)).containsExactly(BagFinding.PAYLOAD_ELSEWHERE, BagFinding.NO_TAG_MANIFEST);
    }

    @Test
    void theDeclarationIsNeeded() throws Exception { // 2.1.1
        files.remove("bagit.txt");
        assertThat(findings()).contains(BagFinding.DECLARATION_MISSING);
        assertThat(read().isComplete()).isFalse();
    }

    @Test
    void theDeclarationIsExactlyTwoLines() throws Exception { // 2.1.1, and the grammar of 7.1
        for (String malformed : List.of(
                "BagIt-Version: 1.0\n",
                "Tag-File-Character-Encoding: UTF-8\nBagIt-Version: 1.0\n",
                DECLARATION + "Other: x\n",
                "BagIt-Version : 1.0\nTag-File-Character-Encoding: UTF-8\n",
                "BagIt-Version:1.0\nTag-File-Character-Encoding:UTF-8\n",
                "bagit-version: 1.0\nTag-File-Character-Encoding: UTF-8\n",
                "\uFEFF" + DECLARATION,
                "")) {
            files.put("bagit.txt", malformed);
            assertThat(findings()).as(malformed).contains(BagFinding.DECLARATION_MALFORMED);
        }
        for (String sound : List.of(DECLARATION, DECLARATION.strip(), DECLARATION.replace("\n", "\r\n"))) {
            files.put("bagit.txt", sound);
            assertThat(findings()).as(sound).doesNotContain(BagFinding.DECLARATION_MALFORMED);
        }
    }

    @Test
    void versionsAndEncodingsThatAreNotKnownAreSaid() throws Exception {
        files.put("bagit.txt", "BagIt-Version: 2.7\nTag-File-Character-Encoding: UTF-16\n");
        assertThat(findings()).contains(BagFinding.VERSION_UNKNOWN, BagFinding.ENCODING_UNREADABLE);
        for (String version : List.of("0.93", "0.94", "0.95", "0.96", "0.97", "1.0")) {
            files.put("bagit.txt", "BagIt-Version: " + version + "\nTag-File-Character-Encoding: UTF-8\n");
            assertThat(findings()).as(version).doesNotContain(BagFinding.VERSION_UNKNOWN);
        }
    }

    @Test
    void aBagWithoutManifestIsIncomplete() throws Exception { // 2.1.3
        files.remove("manifest-md5.txt");
        assertThat(findings()).contains(BagFinding.NO_MANIFEST);
    }

    @Test
    void aFileBelongsInEveryManifest() throws Exception { // 2.1.3, from version 1.0 on
        files.put("manifest-sha1.txt", digest(ChecksumAlgorithm.SHA1, "abc") + " data/A001/two.mxf\n");
        ArchiveFinding missing = finding(read(), BagFinding.NOT_IN_EVERY_MANIFEST);
        assertThat(missing.weight()).isEqualTo(ArchiveFinding.Weight.INCOMPLETE);
        assertThat(missing.arguments()).containsExactly(2L, "data/A001/one.mxf, data/A001/two.mxf");
        files.put("manifest-sha1.txt", digest(ChecksumAlgorithm.SHA1, "abc") + " data/A001/one.mxf\n");
        assertThat(findings()).doesNotContain(BagFinding.NOT_IN_EVERY_MANIFEST);
        files.put("bagit.txt", DECLARATION.replace("1.0", "0.97"));
        files.put("manifest-sha1.txt", digest(ChecksumAlgorithm.SHA1, "abc") + " data/A001/two.mxf\n");
        assertThat(findings()).as("before 1.0").doesNotContain(BagFinding.NOT_IN_EVERY_MANIFEST);
    }

    @Test
    void aFileStandsInAManifestOnce() throws Exception { // 2.1.3
        files.put("manifest-md5.txt", (ABC + "  data/A001/one.mxf\n").repeat(3));
        assertThat(finding(read(), BagFinding.LISTED_TWICE).arguments().get(0)).isEqualTo(2L);
    }

    @Test
    void aManifestThatCannotBeReadIsNamedAndTheOthersAreStillJudged() throws Exception {
        files.put("manifest-sha256.txt", ABC + "  data/A001/one.mxf\n" + ABC + "  data/A001/two.mxf\nno digest\n");
        Bag bag = read();
        assertThat(findings(bag))
                .contains(BagFinding.MANIFEST_UNREADABLE)
                .doesNotContain(BagFinding.NOT_IN_EVERY_MANIFEST, BagFinding.LISTED_TWICE);
        assertThat(bag.manifests())
                .containsEntry("manifest-sha256.txt", State.UNREADABLE)
                .containsEntry("manifest-md5.txt", State.GOOD);
    }

    @Test
    void payloadInTheArchiveIsComparedByNameOnly() throws Exception { // 3: every listed file is present
        files.put("manifest-md5.txt", ABC + "  data/A001/one.mxf\n" + ABC + "  data/A001/two.mxf\n");
        files.put("data/A001/one.mxf", "not abc: bytes are for a reading of the copy");
        files.put("data/A001/three.mxf", "");
        Bag bag = read();
        assertThat(finding(bag, BagFinding.PAYLOAD_MISSING).arguments()).containsExactly(1L, "data/A001/two.mxf");
        assertThat(finding(bag, BagFinding.PAYLOAD_UNLISTED).arguments()).containsExactly(1L, "data/A001/three.mxf");
        assertThat(bag.isUnaltered()).isTrue();
    }

    @Test
    void namesAreComparedInOneUnicodeForm() throws Exception { // 6.1.1.3
        files.put("manifest-md5.txt", ABC + "  data/caf\u00e9.mxf\n");
        files.put("data/cafe\u0301.mxf", "abc");
        assertThat(findings()).doesNotContain(BagFinding.PAYLOAD_MISSING, BagFinding.PAYLOAD_UNLISTED);
    }

    @Test
    void tagFilesAreFoundInWhicheverUnicodeForm() throws Exception { // 6.1.1.3
        files.put("caf\u00e9.txt", "notes");
        tagManifest("bagit.txt", "manifest-md5.txt", "caf\u00e9.txt");
        files.put("cafe\u0301.txt", files.remove("caf\u00e9.txt"));
        assertThat(findings()).contains(BagFinding.TAG_FILES_VALID);
    }

    @Test
    void tagManifestsVouchForTheTextFiles() throws Exception { // 2.2.1
        files.put("bag-info.txt", "Source-Organization: Example\n");
        tagManifest("bagit.txt", "bag-info.txt", "manifest-md5.txt");
        assertThat(findings()).contains(BagFinding.TAG_FILES_VALID).doesNotContain(BagFinding.NO_TAG_MANIFEST);

        files.put("bag-info.txt", "Source-Organization: Another\n");
        Bag altered = read();
        assertThat(finding(altered, BagFinding.TAG_FILE_DIFFERS).arguments()).containsExactly(1L, "bag-info.txt");
        assertThat(altered.isUnaltered()).isFalse();
        assertThat(altered.isComplete()).as("complete apart from valid").isTrue();
        assertThat(altered.manifests()).containsEntry("manifest-md5.txt", State.GOOD);

        files.remove("bag-info.txt");
        assertThat(findings()).contains(BagFinding.TAG_FILE_MISSING);
    }

    @Test
    void aManifestThatIsNotWhatItsTagManifestSaysIsDoubted() throws Exception {
        tagManifest("bagit.txt", "manifest-md5.txt");
        files.put("manifest-md5.txt", ABC + "  data/A001/other.mxf\n");
        assertThat(read().manifests()).containsEntry("manifest-md5.txt", State.DIFFERS);
        tagManifest("bagit.txt");
        Bag bag = read();
        assertThat(bag.manifests()).containsEntry("manifest-md5.txt", State.NOT_LISTED);
        assertThat(findings(bag)).contains(BagFinding.MANIFEST_NOT_IN_TAGS);
    }

    @Test
    void aTagManifestListsNoPayloadAndAnUnknownAlgorithmIsSaid() throws Exception { // 2.2.1
        files.put("tagmanifest-md5.txt", ABC + "  data/A001/one.mxf\n");
        assertThat(findings()).contains(BagFinding.MANIFEST_UNREADABLE);
        files.put("tagmanifest-md5.txt", "");
        files.put("tagmanifest-sha384.txt", "0".repeat(96) + " bagit.txt\n");
        files.put("manifest-sha224.txt", "0".repeat(56) + " data/A001/one.mxf\n");
        assertThat(finding(read(), BagFinding.ALGORITHM_UNKNOWN).count()).isEqualTo(2);
    }

    @Test
    void theBagsInformationIsShownInItsOrder() throws Exception { // 2.2.2
        files.put(
                "bag-info.txt",
                "Contact-Name: One\r\nContact-Name: Two\rExternal-Description: begins\n  and goes on\n\tand on\n");
        assertThat(read().findings().stream()
                        .filter(one -> one.messageKey().equals(BagFinding.INFO_LINE.messageKey()))
                        .map(ArchiveFinding::names))
                .containsExactly(
                        List.of("Contact-Name", "One"),
                        List.of("Contact-Name", "Two"),
                        List.of("External-Description", "begins and goes on and on"));
        files.put("bag-info.txt", "no label\n");
        assertThat(findings()).contains(BagFinding.INFO_MALFORMED);
    }

    @Test
    void theSizeIsAQuickCheckAndNoMore() throws Exception { // 2.2.2, Payload-Oxum
        for (String right : List.of("Payload-Oxum: 7.1", "payload-oxum: 0.1")) {
            files.put("bag-info.txt", right);
            assertThat(findings()).as(right).doesNotContain(BagFinding.SIZE_DIFFERS, BagFinding.SIZE_MALFORMED);
        }
        files.put("bag-info.txt", "Payload-Oxum: 7.2");
        assertThat(findings()).contains(BagFinding.SIZE_DIFFERS);
        files.put("bag-info.txt", "Payload-Oxum: 7\nPayload-Oxum: 99999999999999999999999.99999999999999999999");
        assertThat(findings()).contains(BagFinding.SIZE_MALFORMED, BagFinding.SIZE_REPEATED);
        files.put("data/A001/one.mxf", "seven b");
        files.put("bag-info.txt", "Payload-Oxum: 7.1");
        assertThat(findings()).doesNotContain(BagFinding.SIZE_DIFFERS);
        files.put("bag-info.txt", "Payload-Oxum: 8.1");
        assertThat(findings()).contains(BagFinding.SIZE_DIFFERS);
    }

    @Test
    void filesToFetchAreShownAndNeverFetched() throws Exception { // 2.2.3
        files.put("manifest-md5.txt", ABC + "  data/A001/one.mxf\n" + ABC + "  data/A001/two.mxf\n");
        files.put("data/A001/one.mxf", "abc");
        files.put("fetch.txt", "https://host.invalid/two - data/A001/two.mxf\n");
        Bag bag = read();
        assertThat(finding(bag, BagFinding.FETCH).arguments()).containsExactly(1L, "data/A001/two.mxf");
        assertThat(findings(bag)).doesNotContain(BagFinding.PAYLOAD_MISSING);
        files.put("fetch.txt", """
                https://host.invalid/x 12 data/A001/x.mxf
                https://host.invalid/y twelve data/A001/y.mxf
                https://host.invalid/z 1 ../z
                """);
        bag = read();
        assertThat(finding(bag, BagFinding.FETCH_UNLISTED).arguments()).containsExactly(1L, "data/A001/x.mxf");
        assertThat(finding(bag, BagFinding.FETCH_MALFORMED).count()).isEqualTo(2);
    }

    @Test
    void habitsOfChecksumToolsAreAcceptedAndSaid() throws Exception { // 6.1.3
        files.put("manifest-md5.txt", ABC + " *data/A001/one.mxf\n");
        Bag bag = read();
        assertThat(bag.isComplete()).isTrue();
        assertThat(finding(bag, BagFinding.ASTERISK).arguments()).containsExactly(1L, "manifest-md5.txt");
    }

    @Test
    void percentCodesDependOnTheVersion() throws Exception { // 2.1.3
        files.put("manifest-md5.txt", ABC + "  data/a%0Ab%25.mxf\n");
        files.put("data/a%0Ab%25.mxf", "abc");
        assertThat(findings()).as("1.0 decodes").contains(BagFinding.PAYLOAD_UNLISTED);
        files.put("bagit.txt", DECLARATION.replace("1.0", "0.97"));
        assertThat(findings()).as("0.97 doesn't").doesNotContain(BagFinding.PAYLOAD_UNLISTED);
    }

    @Test
    void aManifestAloneIsReadByTheVersionOfTheBagItCameFromWhereThatIsKnown() throws Exception {
        byte[] manifest = (ABC + "  data/a%25.mxf\n").getBytes(StandardCharsets.UTF_8);
        for (boolean plain : new boolean[] {true, false}) {
            List<String> paths = new ArrayList<>();
            new ManifestReader()
                    .read(
                            new ByteArrayInputStream(manifest),
                            new DocumentHints("manifest-md5.txt", Set.of(), Set.of(), plain),
                            entry -> paths.add(entry.path()));
            assertThat(paths).containsExactly(plain ? "a%25.mxf" : "a%.mxf");
        }
    }

    @Test
    void exactlyThreeCharactersHaveCodes() {
        assertThat(BagPath.decoded("%0a%0D%25%7E%2%")).isEqualTo("\n\r%%7E%2%");
        assertThat(BagPath.decoded("%257E")).isEqualTo("%7E");
        assertThat(BagPath.encoded("a%7E\r\n~")).isEqualTo("a%257E%0D%0A~");
        assertThat(BagPath.hasBarePercent("%25%0A%0d")).isFalse();
        assertThat(BagPath.hasBarePercent("100%")).isTrue();
    }

    @Test
    void aManifestAloneIsKnownByItsPaths() throws Exception {
        String list = ABC + "  data/A001/one.mxf\n";
        for (String name : List.of("manifest-md5.txt", "list.txt", "A001_manifest-md5 (1).txt")) {
            Manifests.Document document = Manifests.read(list, name);
            assertThat(document.header().format()).as(name).isEqualTo(ManifestFormat.BAGIT);
            assertThat(document.paths()).as("relative to the payload").containsExactly("A001/one.mxf");
        }
        // Tabs, many blanks and upper-case digits are the standard's (2.1.3, 2.4); other tools' lists don't have them.
        String spaced = ABC.toUpperCase(Locale.ROOT) + "\t data/A001/one.mxf\r" + ABC + "     data/A001/two.mxf";
        assertThat(Manifests.read(spaced, "list").header().format()).isEqualTo(ManifestFormat.BAGIT);
        assertThat(Manifests.read(spaced, "list").paths()).containsExactly("A001/one.mxf", "A001/two.mxf");
        assertThat(Manifests.read(list + ABC + "  other/x.mxf\n", "list")
                        .header()
                        .format())
                .isEqualTo(ManifestFormat.GNU_LIST);
        assertThat(Manifests.read("\\" + list, "list").header().format()).isEqualTo(ManifestFormat.GNU_LIST);
    }

    @Test
    void theManifestsNameStatesTheAlgorithm() throws Exception { // 2.4
        String line = "99aa06d3014798d86001c324468d497f  data/empty\n";
        Checksum xxh =
                Manifests.read(line, "manifest-xxh128.txt").only().checksums().get(0);
        assertThat(xxh.algorithm()).isEqualTo(ChecksumAlgorithm.XXH128);
        assertThat(xxh.assumed()).isFalse();
        Checksum assumed = Manifests.read(line, "list.txt").only().checksums().get(0);
        assertThat(assumed.assumed()).isTrue();
        String sha512 = "cf83e1357eefb8bdf1542850d66d8007d620e4050b5715dc83f4a921d36ce9ce"
                + "47d0d13c5d85f2b0ff8318d2877eec2f63b931bd47417a81a538327af927da3e data/empty\n";
        assertThat(Manifests.read(sha512, "manifest-sha512.txt").header().algorithms())
                .containsExactly(ChecksumAlgorithm.SHA512);
    }

    @Test
    void pathsThatLeadOutOfTheBagAreRefused() { // 5.1
        Map<String, ManifestProblem> traps = Map.of(
                "data/../../etc/x", ManifestProblem.PATH_PARENT,
                "/data/x", ManifestProblem.PATH_ABSOLUTE,
                "C:/data/x", ManifestProblem.PATH_DRIVE,
                "~user/x", ManifestProblem.BAG_OUTSIDE,
                "bagit.txt", ManifestProblem.BAG_OUTSIDE,
                "data", ManifestProblem.BAG_OUTSIDE);
        traps.forEach((path, problem) -> {
            byte[] manifest = (ABC + "  data/ok\n" + ABC + "  " + path + "\n").getBytes(StandardCharsets.UTF_8);
            ManifestException refusal = catchThrowableOfType(
                    ManifestException.class,
                    () -> BagManifestReader.ofPayload(
                                    new ByteArrayInputStream(manifest), DocumentHints.named("manifest-md5.txt"), true)
                            .read(entry -> {}));
            assertThat(refusal).as(path).isNotNull();
            assertThat(refusal.problem()).as(path).isEqualTo(problem);
            assertThat(refusal.line()).isEqualTo(2);
        });
    }

    @Test
    void linesThatAreNoneAreRefusedWithTheirPlace() {
        Map<String, ManifestProblem> traps = Map.of(
                ABC + "\n", ManifestProblem.BAG_LINE,
                ABC + "   \n", ManifestProblem.BAG_LINE,
                " " + ABC + " data/x\n", ManifestProblem.BAG_LINE,
                ABC.replace('9', 'g') + " data/x\n", ManifestProblem.DIGEST_MALFORMED,
                ABC + "00 data/x\n", ManifestProblem.DIGEST_LENGTH);
        traps.forEach((text, problem) -> {
            ManifestException refusal = catchThrowableOfType(
                    ManifestException.class,
                    () -> BagManifestReader.ofPayload(
                                    new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)),
                                    DocumentHints.named("manifest-md5.txt"),
                                    true)
                            .read(entry -> {}));
            assertThat(refusal).as(text).isNotNull();
            assertThat(refusal.problem()).as(text).isEqualTo(problem);
        });
    }

    @Test
    void whatIsWrittenIsReadBackWhateverTheNames() throws Exception {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < 300; i++) {
            List<ManifestEntry> entries = new ArrayList<>();
            for (int n = 0; n <= random.nextInt(20); n++) {
                entries.add(Manifests.md5(NastyNames.path(random, true), random.nextInt(256)));
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            try (ManifestWriter writer = ManifestWriter.bagManifest(out, ChecksumAlgorithm.MD5)) {
                for (ManifestEntry entry : entries) {
                    writer.write(entry);
                }
            }
            Manifests.Document back = Manifests.read(out.toByteArray(), "manifest-md5.txt");
            assertThat(back.header().format()).isEqualTo(ManifestFormat.BAGIT);
            assertThat(back.paths())
                    .as("seed %d, case %d", SEED, i)
                    .isEqualTo(entries.stream().map(ManifestEntry::path).toList());
            assertThat(back.entries().stream().map(ManifestEntry::checksums))
                    .isEqualTo(entries.stream().map(ManifestEntry::checksums).toList());
        }
    }

    @Test
    void declarationAndInformationAreReadBackAsTheyWereWritten() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        BagDeclaration.CURRENT.write(out);
        assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo(DECLARATION);
        assertThat(BagDeclaration.read(new ByteArrayInputStream(out.toByteArray())))
                .isEqualTo(BagDeclaration.CURRENT);

        BagInfo info = new BagInfo(
                List.of(
                        new BagInfo.Line("Contact-Name", "One"),
                        new BagInfo.Line("Contact-Name", "Zwei: ä"),
                        new BagInfo.Line("External-Description", "one line\nand another")),
                0);
        ByteArrayOutputStream written = new ByteArrayOutputStream();
        info.write(written);
        BagInfo back = BagInfo.read(new ByteArrayInputStream(written.toByteArray()));
        assertThat(back.lines().get(2).value()).isEqualTo("one line and another");
        assertThat(back.lines().subList(0, 2)).isEqualTo(info.lines().subList(0, 2));
        assertThat(back.malformed()).isZero();
    }
}
