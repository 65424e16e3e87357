package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import rollbook.manifest.ManifestEntry.Action;

/** Damaged documents are read as far as they are valid lists, or refused with a place; nothing else happens. */
class BrokenManifestTests {
    private static final long SEED = 8_086;

    @Test
    void truncationGivesARefusalOrAShorterList() throws Exception {
        for (byte[] document : documents()) {
            List<String> whole = Manifests.read(document, "list").paths();
            for (int length = 0; length < document.length; length++) {
                try {
                    List<String> paths = Manifests.read(Arrays.copyOf(document, length), "list")
                            .paths();
                    assertThat(paths.size()).as("cut at %d", length).isLessThanOrEqualTo(whole.size());
                    assertThat(paths.subList(0, paths.size() - 1))
                            .as("cut at %d", length)
                            .isEqualTo(whole.subList(0, paths.size() - 1));
                } catch (ManifestException refusal) {
                    assertPlaced(refusal, "cut at " + length);
                }
            }
        }
    }

    /** All but the white space after the root element is needed. */
    @Test
    void aTruncatedHashListIsAlwaysRefused() throws Exception {
        byte[] document = Manifests.example(Manifests.FIRST_GENERATION);
        for (int length = 0; length < document.length - 1; length++) {
            assertPlaced(Manifests.refusal(Arrays.copyOf(document, length)), "cut at " + length);
        }
    }

    @Test
    void randomDamageGivesARefusalOrAList() throws Exception {
        SplittableRandom random = new SplittableRandom(SEED);
        for (byte[] document : documents()) {
            for (int i = 0; i < 4_000; i++) {
                readOrRefuse(damaged(document, random), "seed " + SEED + ", case " + i);
            }
        }
    }

    @Test
    void garbageIsRefused() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < 2_000; i++) {
            byte[] garbage = new byte[random.nextInt(300)];
            random.nextBytes(garbage);
            if (garbage.length > 0 && i % 2 == 0) {
                garbage[0] = '<';
            }
            assertPlaced(Manifests.refusal(garbage), "seed " + SEED + ", case " + i);
        }
    }

    private static byte[] damaged(byte[] document, SplittableRandom random) {
        byte[] damaged = document.clone();
        for (int flips = 1 + random.nextInt(4); flips > 0; flips--) {
            int at = random.nextInt(damaged.length);
            damaged[at] = switch (random.nextInt(4)) {
                case 0 -> (byte) (damaged[at] ^ 1 << random.nextInt(8));
                case 1 -> (byte) random.nextInt(256);
                case 2 -> "<>&\\/\"\n\r\0 =()".getBytes(java.nio.charset.StandardCharsets.US_ASCII)[random.nextInt(13)];
                default -> damaged[random.nextInt(damaged.length)];
            };
        }
        return damaged;
    }

    private static void readOrRefuse(byte[] document, String which) {
        try {
            Manifests.read(document, "list");
        } catch (ManifestException refusal) {
            assertPlaced(refusal, which);
        } catch (RuntimeException e) {
            throw new AssertionError(which, e);
        }
    }

    private static void assertPlaced(ManifestException refusal, String which) {
        assertThat(refusal.line()).as(which).isPositive();
        assertThat(refusal.column()).as(which).isPositive();
    }

    private static List<byte[]> documents() throws IOException {
        SplittableRandom random = new SplittableRandom(SEED);
        List<ManifestEntry> entries = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            entries.add(new ManifestEntry(
                    NastyNames.path(random, false),
                    (long) i,
                    List.of(NastyNames.checksum(random, ChecksumAlgorithm.MD5)),
                    Action.ORIGINAL,
                    1,
                    i % 3 == 0 ? "earlier" : null,
                    i % 2 == 0 ? Instant.EPOCH : null));
        }
        Checksum digest = NastyNames.checksum(random, ChecksumAlgorithm.XXH64);
        DirectoryHash root = new DirectoryHash("", List.of(digest), List.of(digest), null, 1);
        DirectoryHash directory = new DirectoryHash("d", List.of(digest), List.of(digest), "e", 1);
        MhlReference reference = new MhlReference("d/ascmhl/1.mhl", NastyNames.checksum(random, ChecksumAlgorithm.C4));
        MhlScope scope = new MhlScope(root, List.of("*.tmp", "[a-z]/"), List.of(reference));
        ByteArrayOutputStream gnu = new ByteArrayOutputStream();
        ByteArrayOutputStream bsd = new ByteArrayOutputStream();
        ByteArrayOutputStream nul = new ByteArrayOutputStream();
        ByteArrayOutputStream table = new ByteArrayOutputStream();
        ByteArrayOutputStream mhl = new ByteArrayOutputStream();
        try (ManifestWriter g = ManifestWriter.gnuList(gnu, ChecksumAlgorithm.MD5);
                ManifestWriter n = ManifestWriter.nulEndedList(nul, ChecksumAlgorithm.MD5);
                ManifestWriter t = ManifestWriter.table(table, Set.of(ChecksumAlgorithm.MD5));
                ManifestWriter b = ManifestWriter.bsdList(bsd);
                ManifestWriter m = ManifestWriter.ascMhl(mhl, Manifests.CREATOR, scope)) {
            for (ManifestEntry entry : entries) {
                g.write(entry);
                n.write(entry);
                t.write(entry);
                b.write(entry);
                m.write(entry);
            }
            m.write(directory);
        }
        return List.of(gnu.toByteArray(), bsd.toByteArray(), nul.toByteArray(), table.toByteArray(), mhl.toByteArray());
    }
}
