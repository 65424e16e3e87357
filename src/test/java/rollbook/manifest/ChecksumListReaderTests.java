package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.manifest.Manifests.ABC_MD5;
import static rollbook.manifest.Manifests.EMPTY_MD5;
import static rollbook.manifest.Manifests.read;
import static rollbook.manifest.Manifests.refusal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Base64;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import rollbook.manifest.ManifestHeader.AlgorithmBasis;

/**
 * The line forms follow the GNU coreutils manual ("cksum output modes", "cksum common options") and, where the manual is
 * silent, what coreutils 9.1 was seen to do; the xxHash forms follow the xxhsum manual page.
 */
class ChecksumListReaderTests {
    private static final String XXH64 = "44bc2cf5ad770999";

    @ParameterizedTest
    @ValueSource(
            strings = {
                ABC_MD5 + "  Clips/a b.mxf",
                ABC_MD5 + " *Clips/a b.mxf",
                ABC_MD5 + " Clips/a b.mxf",
                ABC_MD5 + "\tClips/a b.mxf",
                "  " + ABC_MD5 + "  Clips/a b.mxf",
                "MD5 (Clips/a b.mxf) = " + ABC_MD5,
                "MD5(Clips/a b.mxf)= " + ABC_MD5,
                "# made on set\n; by hand\n\n" + ABC_MD5 + "  ./Clips//./a b.mxf\r\n",
                "\uFEFF" + ABC_MD5 + "  Clips/a b.mxf",
            })
    void readsEveryFormOfALine(String content) throws Exception {
        ManifestEntry entry = read(content).only();

        assertThat(entry.path()).isEqualTo("Clips/a b.mxf");
        assertThat(entry.sizeBytes()).isNull();
        assertThat(entry.action()).isEqualTo(ManifestEntry.Action.NONE);
        assertThat(entry.checksums()).containsExactly(Checksum.parse(ChecksumAlgorithm.MD5, ABC_MD5));
    }

    @Test
    void readsUpperCaseDigests() throws Exception {
        assertThat(read(ABC_MD5.toUpperCase(Locale.ROOT) + "  a").only().checksums())
                .containsExactly(Checksum.parse(ChecksumAlgorithm.MD5, ABC_MD5));
    }

    @Test
    void saysFormatAndLine() throws Exception {
        Manifests.Document gnu = read("# comment\n" + ABC_MD5 + "  a\n" + EMPTY_MD5 + "  b\n");
        Manifests.Document bsd = read("SHA1 (a) = da39a3ee5e6b4b0d3255bfef95601890afd80709\n");

        assertThat(gnu.header().format()).isEqualTo(ManifestFormat.GNU_LIST);
        assertThat(gnu.header().entries()).isEqualTo(2);
        assertThat(gnu.entries()).extracting(ManifestEntry::line).containsExactly(2L, 3L);
        assertThat(bsd.header().format()).isEqualTo(ManifestFormat.BSD_LIST);
        assertThat(bsd.header().basis()).isEqualTo(AlgorithmBasis.STATED);
        assertThat(bsd.only().checksums().get(0).assumed()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({
        "list.txt, MD5, DIGEST_LENGTH",
        "A014.md5, MD5, FILE_NAME",
        "MD5SUMS, MD5, FILE_NAME",
        "manifest-md5.txt, MD5, FILE_NAME",
        "A014.xxh128, XXH128, FILE_NAME",
        "A014.XXH128.txt, XXH128, FILE_NAME",
        "A014.sha1, MD5, DIGEST_LENGTH",
        "A014_md5_xxh128.txt, MD5, DIGEST_LENGTH",
    })
    void concludesTheAlgorithmOf32Digits(String fileName, ChecksumAlgorithm algorithm, AlgorithmBasis basis)
            throws Exception {
        Manifests.Document document = read(ABC_MD5 + "  a", fileName);

        assertThat(document.header().algorithms()).containsExactly(algorithm);
        assertThat(document.header().basis()).isEqualTo(basis);
        assertThat(document.only().checksums().get(0).assumed()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "16, list, XXH64", "16, a.xxh64, XXH64", "16, a.xxh3, XXH3_64", "16, a.xxh3_64, XXH3_64",
        "40, list, SHA1", "64, sha256sum.txt, SHA256", "64, list, SHA256", "128, a.sha512, SHA512"
    })
    void concludesTheAlgorithmFromNameAndLength(int digits, String fileName, ChecksumAlgorithm algorithm)
            throws Exception {
        assertThat(read("0".repeat(digits) + "  a", fileName).header().algorithms())
                .containsExactly(algorithm);
    }

    @Test
    void readsTheOwnFormsOfXxhsum() throws Exception {
        assertThat(read("XXH3_78af5f94892f3950  a").only().checksums())
                .containsExactly(Checksum.parse(ChecksumAlgorithm.XXH3_64, "78af5f94892f3950"));
        assertThat(read("XXH3 (a) = 78af5f94892f3950").header().algorithms())
                .containsExactly(ChecksumAlgorithm.XXH3_64);
        assertThat(read("XXH64_LE (a) = 990977adf52cbc44").only().checksums())
                .containsExactly(Checksum.parse(ChecksumAlgorithm.XXH64, XXH64));
    }

    /** OpenSSL 3 prints this tag for SHA-256. */
    @Test
    void readsTheTagsOfOpenssl() throws Exception {
        assertThat(read("SHA2-256(a)= " + "0".repeat(64)).header().algorithms())
                .containsExactly(ChecksumAlgorithm.SHA256);
    }

    @Test
    void readsC4Lists() throws Exception {
        String c4 = "c459dsjfscH38cYeXXYogktxf4Cd9ibshE3BHUo6a58hBXmRQdZrAkZzsWcbWtDg5oQstpDuni4Hirj75GEmTc1sFT";

        assertThat(read(c4 + "  a").header().algorithms()).containsExactly(ChecksumAlgorithm.C4);
    }

    @Test
    void undoesEscapesOnlyWhereTheLineAnnouncesThem() throws Exception {
        assertThat(read("\\" + ABC_MD5 + "  a\\\\b\\nc\\rd").only().path()).isEqualTo("a\\b\nc\rd");
        assertThat(read("\\MD5 (a\\nb) = " + ABC_MD5).only().path()).isEqualTo("a\nb");
        assertThat(read(ABC_MD5 + "  d/a\\nb").only().path()).isEqualTo("d/a\\nb");
    }

    /** The last bracket ends the name. */
    @Test
    void tellsTheNameOfATaggedLineFromItsEnd() throws Exception {
        assertThat(read("MD5 (x) = y) = " + ABC_MD5).only().path()).isEqualTo("x) = y");
    }

    @Test
    void keepsBlanksInNames() throws Exception {
        assertThat(read(ABC_MD5 + "   a ").only().path()).isEqualTo(" a ");
        assertThat(read(ABC_MD5 + " a\n" + ABC_MD5 + "  b").paths())
                .as("the first line decides on the reversed form")
                .containsExactly("a", " b");
    }

    /** As coreutils 9.1 was seen to take them: a third blank, one at the end, and a column of sizes are of the name. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            ignoreLeadingAndTrailingWhitespace = false,
            value = {"   a| a", "  a |a ", "  12345 a|12345 a", " *a|a", "  *a|*a", "  a\\tb|a\\tb"})
    void takesTheRestOfTheLineForTheName(String rest, String name) throws Exception {
        assertThat(read(ABC_MD5 + "  d/x\n" + ABC_MD5 + rest).paths()).containsExactly("d/x", name);
    }

    /** GNU coreutils calls the last three malformed lines; they are harmless, and lists written by hand have them. */
    @ParameterizedTest
    @ValueSource(strings = {"", "\r", "# remark", "  # remark", "; remark", " \t "})
    void passesOverRemarksAndEmptyLines(String line) throws Exception {
        assertThat(read(line + "\n" + ABC_MD5 + "  a\n" + line + "\n" + EMPTY_MD5 + "  b")
                        .paths())
                .containsExactly("a", "b");
    }

    /** In the reversed form a name may begin with a letter that is a flag elsewhere. */
    @Test
    void theReversedFormKeepsTheFirstLetter() throws Exception {
        String sha1 = "a9993e364706816aba3e25717850c26c9cd0d89d";

        assertThat(read(ABC_MD5 + " UNIT/a").only().path()).isEqualTo("UNIT/a");
        assertThat(read(sha1 + " CLIP/a\n" + sha1 + " UNIT/a").paths()).containsExactly("CLIP/a", "UNIT/a");
    }

    /** Base 64 with its padding, as the coreutils manual describes {@code cksum --base64}; bytes by the Java platform. */
    @ParameterizedTest
    @EnumSource(
            value = ChecksumAlgorithm.class,
            names = {"MD5", "SHA1", "SHA256", "SHA512"})
    void readsDigestsInBase64(ChecksumAlgorithm algorithm) throws Exception {
        byte[] digest = MessageDigest.getInstance(algorithm.label()).digest("abc".getBytes(StandardCharsets.UTF_8));
        String text = Base64.getEncoder().encodeToString(digest);

        assertThat(read(algorithm.tag() + " (a) = " + text).only().checksums())
                .containsExactly(Checksum.of(algorithm, digest));
        Manifests.Document untagged = read(text + "  a");
        assertThat(untagged.only().checksums()).containsExactly(Checksum.of(algorithm, digest));
        assertThat(untagged.header().basis()).isEqualTo(AlgorithmBasis.DIGEST_LENGTH);
        assertThat(refusal(text.replace("=", "") + "  a").problem())
                .isIn(ManifestProblem.NOT_A_LIST_LINE, ManifestProblem.DIGEST_MALFORMED);
    }

    /** The coreutils manual on {@code --zero}: every line ends with NUL and no name is escaped. */
    @Test
    void readsLinesThatAreEndedByNul() throws Exception {
        Manifests.Document gnu = read(ABC_MD5 + "  a\nb\r\0" + EMPTY_MD5 + " *d\\e\0# read again\0");
        Manifests.Document bsd = read("MD5 (a\nb) = " + ABC_MD5 + "\0");

        assertThat(gnu.paths()).containsExactly("a\nb\r", "d\\e");
        assertThat(gnu.entries()).extracting(ManifestEntry::line).containsExactly(1L, 2L);
        assertThat(gnu.header().format()).isEqualTo(ManifestFormat.GNU_LIST);
        assertThat(bsd.only().path()).isEqualTo("a\nb");
        assertThat(bsd.header().format()).isEqualTo(ManifestFormat.BSD_LIST);
    }

    /** A text list with NUL bytes at its end, or in it, would otherwise be one file with a very long name. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "BINARY | 1 | L1LFL2LF",
                "BINARY | 1 | #LFL1LF",
                "BINARY | 1 | L1LFTAGGEDLF",
                "BINARY | 2 | L1",
                "NOT_A_LIST_LINE | 1 | \\L1",
                "BINARY | 1 | LFL1",
            })
    void refusesATextListWithNulBytes(ManifestProblem problem, long line, String pattern) {
        String content = pattern.replace("L1", ABC_MD5 + "  a")
                .replace("L2", EMPTY_MD5 + "  b")
                .replace("TAGGED", "MD5 (b) = " + EMPTY_MD5)
                .replace("LF", "\n");
        ManifestException refusal = refusal(content + "\0\0");

        assertThat(refusal.problem()).as(refusal.getMessage()).isEqualTo(problem);
        assertThat(refusal.line()).isEqualTo(line);
    }

    @Test
    void refusesALastLineWithoutItsNul() {
        ManifestException refusal = refusal(ABC_MD5 + "  a\0" + EMPTY_MD5 + "  b");

        assertThat(refusal.problem()).isEqualTo(ManifestProblem.CUT_OFF);
        assertThat(refusal.line()).isEqualTo(2);
    }

    @Test
    void aBackslashSeparatesFoldersWhereNothingElseDoes() throws Exception {
        assertThat(read(ABC_MD5 + "  one\n" + ABC_MD5 + "  A001\\Clips\\x.mov\n" + ABC_MD5 + "  A001\\y")
                        .paths())
                .containsExactly("one", "A001/Clips/x.mov", "A001/y");
        assertThat(read("MD5 (.\\A001\\x) = " + ABC_MD5).only().path()).isEqualTo("A001/x");
    }

    @Test
    void aBackslashIsALetterWhereASlashSeparatesOrTheNameIsEscaped() throws Exception {
        assertThat(read(ABC_MD5 + "  A001/x\n" + ABC_MD5 + "  A001\\x").paths()).containsExactly("A001/x", "A001\\x");
        assertThat(read("\\" + ABC_MD5 + "  A001\\\\x").only().path()).isEqualTo("A001\\x");
        assertThat(read(ABC_MD5 + "  \\x").only().path()).isEqualTo("\\x");
    }

    @Test
    void refusesASlashAfterBackslashes() {
        ManifestException refusal = refusal(ABC_MD5 + "  A001\\x\n" + ABC_MD5 + "  A001/x");

        assertThat(refusal.problem()).isEqualTo(ManifestProblem.PATH_SEPARATORS);
        assertThat(refusal.line()).isEqualTo(2);
        assertThat(refusal.column()).isEqualTo(35);
        assertThat(refusal(ABC_MD5 + "  A001\\x\n" + ABC_MD5 + "  \\x").problem())
                .isEqualTo(ManifestProblem.PATH_ABSOLUTE);
    }

    /** Whatever the separators, two names that differ in more than {@code ./} stay two paths, or the list is refused. */
    @Test
    void differentNamesStayDifferentPaths() {
        long seed = 1_430;
        SplittableRandom random = new SplittableRandom(seed);
        String[] pieces = {"a", "b", "/", "\\"};
        int read = 0;
        for (int i = 0; i < 20_000; i++) {
            Set<String> names = new LinkedHashSet<>();
            for (int n = 0; n < 3; n++) {
                StringBuilder name = new StringBuilder("a");
                for (int p = random.nextInt(4); p > 0; p--) {
                    name.append(pieces[random.nextInt(4)]).append("b");
                }
                names.add(name.toString());
            }
            StringBuilder list = new StringBuilder();
            names.forEach(name -> list.append(ABC_MD5).append("  ").append(name).append('\n'));
            try {
                assertThat(new HashSet<>(read(list.toString()).paths()))
                        .as("seed %d, case %d: %s", seed, i, names)
                        .hasSameSizeAs(names);
                read++;
            } catch (ManifestException refusal) {
                assertThat(refusal.problem()).isEqualTo(ManifestProblem.PATH_SEPARATORS);
            }
        }
        assertThat(read).as("lists that were read").isGreaterThan(5_000);
    }

    @Test
    void bringsNamesIntoOneUnicodeForm() throws Exception {
        assertThat(read(ABC_MD5 + "  Cafe\u0301.mxf").only().path()).isEqualTo("Caf\u00E9.mxf");
    }

    @Test
    void keepsAPathThatIsListedTwice() throws Exception {
        assertThat(read(ABC_MD5 + "  a\n" + EMPTY_MD5 + "  a\n").paths()).containsExactly("a", "a");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "NOTHING_LISTED | 1 | 1 | ''",
                "NOTHING_LISTED | 1 | 1 | '# only a comment'",
                "NOT_A_LIST_LINE | 1 | 1 | 'Good morning, here are the files.'",
                "NOT_A_LIST_LINE | 1 | 1 | '900150983cd24fb0d6963f7d28e17f72'",
                "NOT_A_LIST_LINE | 1 | 1 | 'MD5 (a) = 900150983cd24fb0d6963f7d28e17f72 '",
                "DIGEST_LENGTH | 1 | 1 | '90015098  a'",
                "DIGEST_LENGTH | 1 | 1 | '900150983cd24fb0d6963f7d28e17f7  a'",
                "DIGEST_MALFORMED | 1 | 1 | '900150983cd24fb0d6963f7d28e17fzz  a'",
                "DIGEST_MALFORMED | 1 | 11 | 'MD5 (a) = 900150983cd24fb0d6963f7d28e17f'",
                "DIGEST_MALFORMED | 1 | 11 | 'MD5 (a) = '",
                "ALGORITHM_UNSUPPORTED | 1 | 1 | 'SM3 (a) = 900150983cd24fb0d6963f7d28e17f72'",
                "ALGORITHM_UNSUPPORTED | 1 | 1 | 'SHA224 (a) = 00000000000000000000000000000000000000000000000000000000'",
                "ALGORITHM_UNSUPPORTED | 1 | 1 | 'BLAKE2b-128 (a) = 900150983cd24fb0d6963f7d28e17f72'",
                "ALGORITHM_UNSUPPORTED | 1 | 1 | 'SHA2-512/256(a)= 53048e2681941ef99b2e29b76b4c7dabe4c2d0c634fc6d46e0e2f13107e7af23'",
                "ALGORITHM_UNSUPPORTED | 1 | 1 | 'XXH32 (a) = 32d153ff'",
                "CRC_LIST | 1 | 1 | '4294967295 0 a'",
                "CRC_LIST | 1 | 1 | '16556     1 a'",
                "CRC_LIST | 1 | 1 | '16556     1'",
                "CRC_LIST | 1 | 1 | '294 1 a'",
                "CRC_LIST | 1 | 1 | 'Clips/a.mxf 352441C2'",
                "NOT_OF_BYTES | 1 | 42 | 'a9993e364706816aba3e25717850c26c9cd0d89d Uabc'",
                "NOT_OF_BYTES | 1 | 42 | 'a9993e364706816aba3e25717850c26c9cd0d89d ^abc'",
                "DIGEST_LENGTH | 1 | 1 | '00000000000000000000000000000000000000000000000000000000  a'",
                "DIGEST_MALFORMED | 1 | 11 | 'MD5 (a) = kAFQmDzST7DWlj99KOF/c=='",
                "DIGEST_MALFORMED | 1 | 12 | 'SHA1 (a) = qZk+NkcGgWq6PiVxeFDCbJzQ2J1='",
                "DIGEST_MALFORMED | 1 | 1 | 'XXH3_78af5f94892f395  a'",
                "DIGEST_MALFORMED | 1 | 1 | 'c4OOdsjfscH38cYeXXYogktxf4Cd9ibshE3BHUo6a58hBXmRQdZrAkZzsWcbWtDg5oQstpDuni4Hirj75GEmTc1sFT  a'",
                "ESCAPE_UNKNOWN | 1 | 36 | '\\900150983cd24fb0d6963f7d28e17f72  \\x'",
                "ESCAPE_UNKNOWN | 1 | 37 | '\\900150983cd24fb0d6963f7d28e17f72  a\\'",
                "PATH_EMPTY | 1 | 34 | '900150983cd24fb0d6963f7d28e17f72 '",
                "PATH_EMPTY | 1 | 35 | '900150983cd24fb0d6963f7d28e17f72  ./'",
                "PATH_ABSOLUTE | 1 | 35 | '900150983cd24fb0d6963f7d28e17f72  /media/a'",
                "PATH_ABSOLUTE | 1 | 35 | '900150983cd24fb0d6963f7d28e17f72  \\\\server\\a'",
                "PATH_DRIVE | 1 | 35 | '900150983cd24fb0d6963f7d28e17f72  E:\\a'",
                "PATH_PARENT | 1 | 35 | '900150983cd24fb0d6963f7d28e17f72  a/../../b'",
                "PATH_PARENT | 1 | 35 | '900150983cd24fb0d6963f7d28e17f72  ..\\b'",
            })
    void refusesWithPlaceAndReason(ManifestProblem problem, long line, int column, String content) {
        ManifestException refusal = refusal(content);

        assertThat(refusal.problem()).as(refusal.getMessage()).isEqualTo(problem);
        assertThat(refusal.line()).isEqualTo(line);
        assertThat(refusal.column()).isEqualTo(column);
    }

    @Test
    void countsLinesUpToTheBadOne() {
        ManifestException refusal = refusal("# head\n" + ABC_MD5 + "  a\nwhat?\n");

        assertThat(refusal.line()).isEqualTo(3);
        assertThat(refusal.arguments()).containsExactly("what?");
    }

    @Test
    void refusesOneBlankAfterLinesWithTwo() {
        assertThat(refusal(ABC_MD5 + "  a\n" + ABC_MD5 + " b").problem()).isEqualTo(ManifestProblem.MIXED_LISTS);
    }

    @Test
    void refusesOtherCodings() {
        String line = ABC_MD5 + "  a\n";
        assertThat(refusal(line.getBytes(StandardCharsets.UTF_16)).problem()).isEqualTo(ManifestProblem.UTF16);
        assertThat(refusal(("\uFEFF" + line).getBytes(StandardCharsets.UTF_16LE))
                        .problem())
                .isEqualTo(ManifestProblem.UTF16);
        assertThat(refusal(line.getBytes(StandardCharsets.UTF_16LE)).problem()).isEqualTo(ManifestProblem.BINARY);
        ManifestException latin1 = refusal((ABC_MD5 + "  caf\u00E9").getBytes(StandardCharsets.ISO_8859_1));
        assertThat(latin1.problem()).isEqualTo(ManifestProblem.NOT_UTF8);
        assertThat(latin1.column()).isEqualTo(38);
    }

    @Test
    void refusesNulBytesAndBareCarriageReturns() {
        assertThat(refusal(ABC_MD5 + "\0  a").problem()).isEqualTo(ManifestProblem.NOT_A_LIST_LINE);
        assertThat(refusal(ABC_MD5.substring(0, 9) + "\0").problem()).isEqualTo(ManifestProblem.BINARY);
        assertThat(refusal(ABC_MD5 + "  " + "a".repeat(9_000) + "\n\0").problem())
                .isEqualTo(ManifestProblem.BINARY);
        assertThat(refusal(ABC_MD5 + "  a\r" + ABC_MD5 + "  b").problem()).isEqualTo(ManifestProblem.CARRIAGE_RETURN);
    }

    @Test
    void refusesALineWithoutEnd() {
        assertThat(refusal(ABC_MD5 + "  " + "a".repeat(70_000)).problem()).isEqualTo(ManifestProblem.LINE_TOO_LONG);
        assertThat(refusal(ABC_MD5 + "  " + "a".repeat(70_000)).arguments()).containsExactly("65536");
    }

    @Test
    void aRefusalQuotesNoControlCharactersAndNoMoreThanALine() {
        ManifestException refusal = refusal("\u001B[31m" + "x".repeat(500));

        assertThat(refusal.arguments().get(0)).doesNotContain("\u001B").hasSizeLessThan(100);
        assertThat(refusal.getStackTrace()).isEmpty();
    }
}
