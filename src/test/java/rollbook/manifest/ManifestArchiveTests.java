package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * Zip archives, good and hostile. The good ones are written by the Java platform; the layout that the bad ones break is
 * that of the zip application note (APPNOTE 6.3.10, sections 4.3 and 4.4).
 */
class ManifestArchiveTests {
    private static final long SEED = 20_261_126;

    private static String text(ManifestArchive archive, String path) throws Exception {
        return new String(archive.read(path, InputStream::readAllBytes), StandardCharsets.UTF_8);
    }

    private static ManifestException refusal(byte[] bytes) {
        ManifestException refusal = catchThrowableOfType(ManifestException.class, () -> readAll(bytes));
        assertThat(refusal).as("the archive was read").isNotNull();
        assertThat(refusal.problem().ofArchive()).isTrue();
        return refusal;
    }

    private static void readAll(byte[] bytes) throws Exception {
        ManifestArchive archive = Zip.open(bytes);
        for (String path : archive.paths()) {
            archive.read(path, InputStream::readAllBytes);
        }
    }

    @Test
    void filesAreReadWhateverTheirOrderAndPacking() throws Exception {
        byte[] stored = {1, 2, 3};
        ManifestArchive archive = new Zip()
                .folder("a/")
                .file("a/one.md5", "one".repeat(10_000))
                .stored("a/two.md5", stored)
                .file("a/empty", "")
                .file("ä/日本.md5", "three")
                .open();
        assertThat(archive.paths()).containsExactly("a/one.md5", "a/two.md5", "a/empty", "ä/日本.md5");
        assertThat(text(archive, "ä/日本.md5")).isEqualTo("three");
        assertThat(archive.read("a/two.md5", InputStream::readAllBytes)).isEqualTo(stored);
        assertThat(text(archive, "a/one.md5")).isEqualTo("one".repeat(10_000));
        assertThat(text(archive, "a/empty")).isEmpty();
        assertThat(archive.sizeBytes("a/one.md5")).isEqualTo(30_000);
    }

    @Test
    void aDocumentIsAnArchiveByItsFirstBytes() {
        assertThat(ManifestArchive.beginsLikeOne(new Zip().file("a", "x").bytes()))
                .isTrue();
        assertThat(ManifestArchive.beginsLikeOne(new Zip().bytes())).isTrue();
        assertThat(ManifestArchive.beginsLikeOne("PK is no list".getBytes(StandardCharsets.US_ASCII)))
                .isFalse();
        assertThat(ManifestArchive.beginsLikeOne(new byte[0])).isFalse();
    }

    @Test
    void anArchiveCutAnywhereIsRefused() {
        byte[] whole =
                new Zip().file("a/one.md5", "one").file("b/two.md5", "two").bytes();
        for (int length = 0; length < whole.length; length++) {
            assertThat(refusal(Arrays.copyOf(whole, length)).problem())
                    .as("cut at %d", length)
                    .isEqualTo(ManifestProblem.ZIP_DAMAGED);
        }
    }

    @Test
    void anyDamageGivesARefusalOrTheSameFiles() throws Exception {
        SplittableRandom random = new SplittableRandom(SEED);
        byte[] whole = new Zip()
                .file("a/one.md5", "one ".repeat(50))
                .stored("b/two.md5", new byte[40])
                .bytes();
        int refused = 0;
        for (int i = 0; i < 20_000; i++) {
            byte[] damaged = whole.clone();
            for (int flips = 1 + random.nextInt(3); flips > 0; flips--) {
                damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
            }
            try {
                ManifestArchive archive = Zip.open(damaged);
                for (String path : archive.paths()) {
                    assertThat(text(archive, path))
                            .as("seed %d, case %d", SEED, i)
                            .isIn("one ".repeat(50), "\0".repeat(40));
                }
            } catch (ManifestException refusal) {
                assertThat(refusal.problem().ofArchive())
                        .as("seed %d, case %d: %s", SEED, i, refusal.problem())
                        .isTrue();
                refused++;
            }
        }
        assertThat(refused).as("most damage is noticed").isGreaterThan(15_000);
    }

    @Test
    void namesThatLeadElsewhereAreRefused() {
        for (String name : new String[] {
            "../a.md5",
            "a/../../b.md5",
            "..",
            "/etc/a.md5",
            "C:/a.md5",
            "c:a.md5",
            "a\\b.md5",
            "..\\a.md5",
            "\\\\server\\a.md5",
            "./a.md5",
            "a/./b.md5",
            "a//b.md5",
            "a\0.md5",
            "//",
            "/"
        }) {
            ManifestException refusal = refusal(new Zip().file(name, "x").bytes());
            assertThat(refusal.problem()).as(name).isEqualTo(ManifestProblem.ZIP_PATH);
        }
    }

    @Test
    void theSameNameTwiceIsRefusedThoughSpelledInTwoUnicodeForms() {
        byte[] twice = new Zip().file("a/1.md5", "x").file("a/2.md5", "y").bytes();
        byte[] renamed = new String(twice, StandardCharsets.ISO_8859_1)
                .replace("a/2.md5", "a/1.md5")
                .getBytes(StandardCharsets.ISO_8859_1);
        assertThat(refusal(renamed).problem()).isEqualTo(ManifestProblem.ZIP_TWICE);
        byte[] forms =
                new Zip().file("\u00e9.md5", "x").file("e\u0301.md5", "y").bytes();
        assertThat(refusal(forms).problem()).isEqualTo(ManifestProblem.ZIP_TWICE);
    }

    @Test
    void encryptedFilesAreRefused() {
        for (int flag : new int[] {1, 1 << 6, 1 << 13}) {
            byte[] archive = new Zip().file("a.md5", "x").bytes();
            ByteBuffer directory = Zip.littleEndian(archive);
            int at = Zip.directoryEntry(archive, 0) + 8;
            directory.putShort(at, (short) (directory.getShort(at) | flag));
            assertThat(refusal(archive).problem()).isEqualTo(ManifestProblem.ZIP_ENCRYPTED);
        }
    }

    @Test
    void aMethodThatIsNotSupportedIsSaid() {
        byte[] archive = new Zip().file("a.md5", "x").bytes();
        Zip.littleEndian(archive).putShort(Zip.directoryEntry(archive, 0) + 10, (short) 14);
        Zip.littleEndian(archive).putShort(8, (short) 14);
        assertThat(refusal(archive).problem()).isEqualTo(ManifestProblem.ZIP_METHOD);
    }

    @Test
    void aFileThatUnpacksToFarMoreThanItHoldsIsRefusedBeforeItIsUnpacked() {
        byte[] bomb = new Zip().file("a.md5", new byte[64 << 20]).bytes();
        assertThat(bomb.length).isLessThan(100_000);
        assertThat(refusal(bomb).problem()).isEqualTo(ManifestProblem.ZIP_RATIO);
    }

    @Test
    void aFileThatHoldsMoreOrLessThanTheDirectorySaysIsRefused() {
        for (int change : new int[] {-1, 1, 1_000}) {
            byte[] archive = new Zip().file("a.md5", "x".repeat(2_000)).bytes();
            ByteBuffer bytes = Zip.littleEndian(archive);
            int at = Zip.directoryEntry(archive, 0) + 24;
            bytes.putInt(at, bytes.getInt(at) + change);
            assertThat(refusal(archive).problem()).as("%d", change).isEqualTo(ManifestProblem.ZIP_FILE_DAMAGED);
        }
        byte[] wrongCrc = new Zip().file("a.md5", "x").bytes();
        Zip.littleEndian(wrongCrc).putInt(Zip.directoryEntry(wrongCrc, 0) + 16, 7);
        assertThat(refusal(wrongCrc).problem()).isEqualTo(ManifestProblem.ZIP_FILE_DAMAGED);
    }

    @Test
    void aBombOfFilesThatShareTheirBytesIsRefused() {
        byte[] archive = new Zip()
                .file("a.md5", "x".repeat(100))
                .file("b.md5", "y".repeat(100))
                .bytes();
        Zip.littleEndian(archive).putInt(Zip.directoryEntry(archive, 1) + 42, 0);
        assertThat(refusal(archive).problem()).isEqualTo(ManifestProblem.ZIP_DAMAGED);
    }

    @Test
    void aLocalNameOtherThanTheDirectorysIsRefused() {
        byte[] archive = new Zip().file("a.md5", "x").bytes();
        archive[30] = 'b';
        assertThat(refusal(archive).problem()).isEqualTo(ManifestProblem.ZIP_FILE_DAMAGED);
    }

    @Test
    void moreFilesThanAreReasonableAreRefused() {
        Zip zip = new Zip();
        for (int i = 0; i <= ZipDirectory.MAX_ENTRIES; i++) {
            zip.file(Integer.toString(i), "");
        }
        assertThat(refusal(zip.bytes()).problem()).isEqualTo(ManifestProblem.ZIP_TOO_MANY);
    }

    /** More than 65,535 files need the 64-bit end record (APPNOTE 4.4.1.4), which the platform writes. */
    @Test
    void aDirectoryOfSixtyFourBitsIsRead() throws Exception {
        Zip zip = new Zip();
        for (int i = 0; i < 70_000; i++) {
            zip.file(Integer.toString(i), i == 69_999 ? "last" : "");
        }
        byte[] bytes = zip.bytes();
        assertThat(text(Zip.open(bytes), "69999")).isEqualTo("last");

        ByteBuffer lying = Zip.littleEndian(bytes);
        int end64 = (int) lying.getLong(bytes.length - 22 - 20 + 8);
        for (int field : new int[] {24, 32, 40, 48}) {
            long before = lying.getLong(end64 + field);
            for (long lie : new long[] {-1, Long.MAX_VALUE, Long.MIN_VALUE, before + 1, 0}) {
                lying.putLong(end64 + field, lie);
                if (field != 24) { // entries on this disk: a second count of the same, which decides nothing
                    assertThat(refusal(bytes).problem())
                            .as("%d at %d", lie, field)
                            .isIn(ManifestProblem.ZIP_DAMAGED, ManifestProblem.ZIP_TOO_MANY);
                }
            }
            lying.putLong(end64 + field, before);
        }
    }

    @Test
    void sizesOfSixtyFourBitsThatLieAreRefused() throws Exception {
        for (long size : new long[] {-1, Long.MAX_VALUE, 5L << 30, 1}) {
            byte[] archive = withExtra64("content".repeat(9), size);
            ManifestProblem problem = refusal(archive).problem();
            assertThat(problem)
                    .as("%d", size)
                    .isIn(
                            ManifestProblem.ZIP_DAMAGED,
                            ManifestProblem.ZIP_FILE_DAMAGED,
                            ManifestProblem.ZIP_RATIO,
                            ManifestProblem.ZIP_TOO_LARGE);
        }
        readAll(withExtra64("content".repeat(9), 63));
    }

    /** An archive of one stored file whose unpacked size stands in the zip64 extra field of the directory (4.5.3). */
    private static byte[] withExtra64(String content, long size) throws Exception {
        byte[] plain = new Zip()
                .stored("a.md5", content.getBytes(StandardCharsets.US_ASCII))
                .bytes();
        int at = Zip.directoryEntry(plain, 0);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteBuffer directory = Zip.littleEndian(Arrays.copyOfRange(plain, at, plain.length - 22));
        directory.putInt(24, -1);
        directory.putShort(30, (short) 12);
        out.write(plain, 0, at);
        out.write(directory.array());
        out.write(Zip.littleEndian(new byte[12])
                .putShort((short) 1)
                .putShort((short) 8)
                .putLong(size)
                .array());
        ByteBuffer end = Zip.littleEndian(Arrays.copyOfRange(plain, plain.length - 22, plain.length));
        end.putInt(12, end.getInt(12) + 12);
        out.write(end.array());
        return out.toByteArray();
    }

    @Test
    void allFilesTogetherAreBounded() throws Exception {
        byte[] two = new Zip()
                .file("a.md5", "x".repeat(60))
                .file("b.md5", "y".repeat(60))
                .bytes();
        ManifestArchive archive = ManifestArchive.open(new Zip.Channel(two), 119);
        for (int again = 0; again < 3; again++) {
            assertThat(archive.read("a.md5", InputStream::readAllBytes))
                    .as("the same file again takes nothing more")
                    .hasSize(60);
        }
        ManifestException refusal =
                catchThrowableOfType(ManifestException.class, () -> archive.read("b.md5", InputStream::readAllBytes));
        assertThat(refusal.problem()).isEqualTo(ManifestProblem.ZIP_TOO_LARGE);
        assertThat(ManifestArchive.MAX_UNPACKED_BYTES)
                .as("as large as an upload may be")
                .isEqualTo(4L << 30);
    }

    @Test
    void whatStandsBehindOrBeforeAnArchiveIsRefused() {
        byte[] archive = new Zip().file("a.md5", "x").bytes();
        byte[] behind = Arrays.copyOf(archive, archive.length + 1);
        assertThat(refusal(behind).problem()).isEqualTo(ManifestProblem.ZIP_DAMAGED);
        byte[] before = new byte[archive.length + 1];
        System.arraycopy(archive, 0, before, 1, archive.length);
        assertThat(refusal(before).problem()).isEqualTo(ManifestProblem.ZIP_DAMAGED);
    }
}
