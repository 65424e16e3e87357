package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is found in an archive, and in what order it speaks. */
class ArchiveReaderTests {
    private static final String FIRST = "ascmhl/" + Manifests.FIRST_GENERATION;
    private static final String SECOND = "ascmhl/" + Manifests.SECOND_GENERATION;
    private static final String CHAIN = "ascmhl/ascmhl_chain.xml";
    private static final String LIST = Manifests.ABC_MD5 + "  A001/one.mxf\n";

    /** The worked example of the standards' notes: two generations whose C4 IDs stand in the chain. */
    private static Zip history(String folder) {
        return new Zip()
                .file(folder + SECOND, Manifests.example(Manifests.SECOND_GENERATION))
                .file(folder + FIRST, Manifests.example(Manifests.FIRST_GENERATION))
                .file(folder + CHAIN, Manifests.example("ascmhl_chain.xml"));
    }

    private static List<String> members(ArchiveContents contents) {
        return contents.members().stream()
                .map(member -> member.path() + " " + member.generation() + " " + member.state())
                .toList();
    }

    private static ArchiveContents read(Zip zip) throws Exception {
        return ArchiveReader.read(zip.open());
    }

    private static ManifestProblem refusal(Zip zip) {
        ManifestException refusal = catchThrowableOfType(ManifestException.class, () -> read(zip));
        assertThat(refusal).isNotNull();
        return refusal.problem();
    }

    @Test
    void theGenerationsOfAHistoryComeInTheOrderOfTheChain() throws Exception {
        for (String folder : List.of("", "R001_CU01/", "day 1/R001_CU01/")) {
            ArchiveContents contents = read(history(folder));
            assertThat(contents.format()).isEqualTo(ManifestFormat.MHL_HISTORY);
            assertThat(members(contents)).containsExactly(folder + FIRST + " 1 GOOD", folder + SECOND + " 2 GOOD");
            assertThat(contents.findings()).isEmpty();
        }
    }

    @Test
    void aGenerationWithOtherBytesThanTheChainSaysIsFound() throws Exception {
        String altered = new String(Manifests.example(Manifests.SECOND_GENERATION), StandardCharsets.UTF_8) + "\n";
        ArchiveContents contents = read(new Zip()
                .file(FIRST, Manifests.example(Manifests.FIRST_GENERATION))
                .file(SECOND, altered)
                .file(CHAIN, Manifests.example("ascmhl_chain.xml")));
        assertThat(members(contents)).containsExactly(FIRST + " 1 GOOD", SECOND + " 2 DIFFERS");
    }

    @Test
    void aMissingGenerationIsSaid() throws Exception {
        ArchiveContents contents = read(new Zip()
                .file(SECOND, Manifests.example(Manifests.SECOND_GENERATION))
                .file(CHAIN, Manifests.example("ascmhl_chain.xml")));
        assertThat(members(contents)).containsExactly(FIRST + " 1 MISSING", SECOND + " 2 GOOD");
        assertThat(contents.members().get(0).isThere()).isFalse();
    }

    @Test
    void withoutAChainNothingIsVouchedFor() throws Exception {
        ArchiveContents contents = read(new Zip().file(FIRST, Manifests.example(Manifests.FIRST_GENERATION)));
        assertThat(members(contents)).containsExactly(FIRST + " 1 NOT_LISTED");
        assertThat(contents.findings())
                .extracting(ArchiveFinding::messageKey)
                .contains(HistoryProblem.Kind.CHAIN_MISSING.messageKey());
    }

    @Test
    void aHashListThatTheChainDoesNotKnowStandsWhereItsNumberPutsIt() throws Exception {
        String stray = "ascmhl/0001_R001_CU01_2026-03-04_190000Z.mhl";
        byte[] other = new String(Manifests.example(Manifests.FIRST_GENERATION), StandardCharsets.UTF_8)
                .replace("cart-a", "cart-b")
                .getBytes(StandardCharsets.UTF_8);
        assertThat(members(read(history("").file(stray, other))))
                .containsExactly(FIRST + " 1 GOOD", stray + " 1 NOT_LISTED", SECOND + " 2 GOOD");
    }

    @Test
    void aBagsManifestsAreMembersThatSpeakTogether() throws Exception {
        ArchiveContents contents = read(new Zip()
                .file("b/bagit.txt", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n")
                .file("b/manifest-sha1.txt", "a9993e364706816aba3e25717850c26c9cd0d89d data/A001/one.mxf\n")
                .file("b/manifest-md5.txt", Manifests.ABC_MD5 + " data/A001/one.mxf\n")
                .file("b/data/A001/one.mxf", "abc")
                .file("b/data/notes.md5", "of no interest: payload"));
        assertThat(contents.format()).isEqualTo(ManifestFormat.BAG);
        assertThat(members(contents)).containsExactly("b/manifest-md5.txt null GOOD", "b/manifest-sha1.txt null GOOD");
        assertThat(contents.members()).extracting(ArchiveMember::bag).containsOnly("b/");
    }

    @Test
    void aHistoryInABagsPayloadAndABagInsideAnotherAreNotMixedUp() throws Exception {
        String declaration = "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n";
        ArchiveContents contents = read(history("bag/data/R001_CU01/")
                .file("bag/bagit.txt", declaration)
                .file("bag/manifest-md5.txt", Manifests.ABC_MD5 + " data/R001_CU01/one.mxf\n")
                .file("bag/data/inner/bagit.txt", declaration)
                .file("bag/data/inner/manifest-md5.txt", Manifests.ABC_MD5 + " data/x\n"));
        assertThat(contents.format()).isEqualTo(ManifestFormat.ARCHIVE);
        assertThat(members(contents))
                .containsExactly(
                        "bag/data/R001_CU01/" + FIRST + " 1 GOOD",
                        "bag/data/R001_CU01/" + SECOND + " 2 GOOD",
                        "bag/manifest-md5.txt null GOOD");
    }

    @Test
    void listsThatStandAloneAreMembersAndTextsAreByTheirContent() throws Exception {
        ArchiveContents contents = read(new Zip()
                .file("A001.md5", LIST)
                .file("day/SHA256SUMS", "broken, and its own page will say so")
                .file("checksums.txt", LIST)
                .file("README.txt", "Dear colleague,\nhere are the lists.\n")
                .file("A001/clip.mxf", "never looked into")
                .file("A001/._A001.md5", "shadow")
                .file("__MACOSX/A001.md5", "shadow"));
        assertThat(contents.format()).isEqualTo(ManifestFormat.ARCHIVE);
        assertThat(members(contents))
                .containsExactly("A001.md5 null GOOD", "checksums.txt null GOOD", "day/SHA256SUMS null GOOD");
        assertThat(contents.findings()).hasSize(1);
        assertThat(contents.findings().get(0).arguments().get(0)).isEqualTo(4L);
        assertThat(contents.findings().get(0).names().get(0))
                .contains("README.txt", "A001/clip.mxf", "__MACOSX/A001.md5");
    }

    @Test
    void mediaIsNeverUnpacked() throws Exception {
        byte[] archive = new Zip()
                .file("A001.md5", LIST)
                .file("clip.mxf", "x".repeat(500))
                .bytes();
        // Its packed bytes are no deflate stream any more: had they been read, this would be a damaged archive.
        int packedAt = Zip.littleEndian(archive).getInt(Zip.directoryEntry(archive, 1) + 42) + 30 + "clip.mxf".length();
        Arrays.fill(archive, packedAt, packedAt + 5, (byte) -1);
        assertThatThrownBy(() -> Zip.open(archive).read("clip.mxf", InputStream::readAllBytes))
                .isInstanceOf(ManifestException.class);
        assertThat(members(ArchiveReader.read(Zip.open(archive)))).containsExactly("A001.md5 null GOOD");
    }

    @Test
    void anArchiveInAnArchiveAndOneWithoutManifestsAreRefused() {
        assertThat(refusal(new Zip().file("A001.md5", LIST).file("more/B.ZIP", "x")))
                .isEqualTo(ManifestProblem.ZIP_NESTED);
        assertThat(refusal(new Zip().file("clip.mxf", "x").file("README.txt", "Hello.")))
                .isEqualTo(ManifestProblem.ZIP_NOTHING);
        assertThat(refusal(new Zip())).isEqualTo(ManifestProblem.ZIP_NOTHING);
    }

    @Test
    void moreManifestsThanAreReasonableAreRefused() {
        Zip zip = new Zip();
        for (int i = 0; i <= ArchiveReader.MAX_MEMBERS; i++) {
            zip.file(i + ".md5", "");
        }
        assertThat(refusal(zip)).isEqualTo(ManifestProblem.ZIP_TOO_MANY_MANIFESTS);
    }

    @Test
    void aDamagedFileInAnArchiveRefusesTheWholeOfIt() {
        for (String path : List.of(FIRST, "b/manifest-md5.txt", "b/tagmanifest-md5.txt", "b/fetch.txt", "list.txt")) {
            byte[] archive = new Zip()
                    .file("b/bagit.txt", "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n")
                    .file(path, LIST.replace("A001", "data"))
                    .bytes();
            Zip.littleEndian(archive).putInt(Zip.directoryEntry(archive, 1) + 16, 7);
            ManifestException refusal =
                    catchThrowableOfType(ManifestException.class, () -> ArchiveReader.read(Zip.open(archive)));
            assertThat(refusal).as(path).isNotNull();
            assertThat(refusal.problem()).as(path).isEqualTo(ManifestProblem.ZIP_FILE_DAMAGED);
            assertThat(refusal.arguments()).containsExactly(path);
        }
    }
}
