package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static rollbook.manifest.ChecksumAlgorithm.MD5;
import static rollbook.manifest.ChecksumAlgorithm.XXH64;
import static rollbook.manifest.Manifests.digest;

import java.io.ByteArrayOutputStream;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.ManifestHeader.Process;

/** ASC MHL 1.0, 5.6.7 and 5.6.6. */
class FlatteningTests {
    private static final Instant FIRST = Instant.parse("2026-03-04T10:00:00Z");
    private static final Instant SECOND = Instant.parse("2026-03-05T10:00:00Z");

    @Test
    void ofOneAlgorithmTheEarliestDigestStays() {
        assertThat(Flattening.flatten(List.of(
                        List.of(entry("a", 1, Action.ORIGINAL, FIRST, null, digest(MD5, 1))),
                        List.of(entry("a", 2, Action.VERIFIED, SECOND, null, digest(MD5, 2), digest(XXH64, 3))))))
                .containsExactly(entry("a", 2, Action.ORIGINAL, SECOND, null, digest(MD5, 1), digest(XXH64, 3)));
    }

    @Test
    void failedDigestsAreDropped() {
        ManifestEntry good = entry("a", 1, Action.ORIGINAL, FIRST, null, digest(MD5, 1));
        ManifestEntry failed = entry("a", 9, Action.FAILED, SECOND, null, digest(MD5, 2), digest(XXH64, 2));

        assertThat(Flattening.flatten(List.of(List.of(good), List.of(failed)))).containsExactly(good);
        assertThat(Flattening.flatten(List.of(List.of(failed), List.of(good)))).containsExactly(good);
        assertThat(Flattening.flatten(List.of(List.of(failed)))).isEmpty();
    }

    @Test
    void filesThatCameLaterAreAdded() {
        ManifestEntry a = entry("a", 1, Action.VERIFIED, FIRST, null, digest(MD5, 1));
        ManifestEntry b = entry("b", 1, Action.NONE, FIRST, null, digest(MD5, 2));

        assertThat(Flattening.flatten(List.of(List.of(a), List.of(b))))
                .extracting(ManifestEntry::path, ManifestEntry::action)
                .containsExactly(tuple("a", Action.VERIFIED), tuple("b", Action.ORIGINAL));
    }

    @Test
    void aRenamedFileTakesItsDigestsAlong() {
        List<ManifestEntry> flat = Flattening.flatten(List.of(
                List.of(entry("a", 1, Action.ORIGINAL, FIRST, null, digest(MD5, 1))),
                List.of(entry("b", 1, Action.VERIFIED, FIRST, "a", digest(XXH64, 1))),
                List.of(entry("b", 1, Action.VERIFIED, SECOND, null, digest(XXH64, 1)))));

        assertThat(flat).containsExactly(entry("b", 1, Action.ORIGINAL, SECOND, "a", digest(MD5, 1), digest(XXH64, 1)));
    }

    @Test
    void twoFilesMayChangeNamesWithEachOther() {
        List<ManifestEntry> flat = Flattening.flatten(List.of(
                List.of(
                        entry("a", 1, Action.ORIGINAL, FIRST, null, digest(MD5, 1)),
                        entry("b", 2, Action.ORIGINAL, FIRST, null, digest(MD5, 2))),
                List.of(
                        entry("a", 2, Action.VERIFIED, FIRST, "b", digest(MD5, 2)),
                        entry("b", 1, Action.VERIFIED, FIRST, "a", digest(MD5, 1)))));

        assertThat(flat)
                .extracting(ManifestEntry::path, ManifestEntry::checksums)
                .containsExactlyInAnyOrder(tuple("a", List.of(digest(MD5, 2))), tuple("b", List.of(digest(MD5, 1))));
    }

    @Test
    void aFlatListCanBeWrittenAndSaysWhatItIs() throws Exception {
        List<ManifestEntry> flat = Flattening.flatten(List.of(
                Manifests.read(Manifests.example(Manifests.FIRST_GENERATION), Manifests.FIRST_GENERATION)
                        .entries(),
                Manifests.read(Manifests.example(Manifests.SECOND_GENERATION), Manifests.SECOND_GENERATION)
                        .entries()));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        MhlCreator creator = new MhlCreator(FIRST, "h", "t", "1", null, Process.FLATTEN);
        try (ManifestWriter writer = ManifestWriter.ascMhl(out, creator)) {
            for (ManifestEntry entry : flat) {
                writer.write(entry);
            }
        }

        Schemas.validateHashList(out.toByteArray());
        Manifests.Document read = Manifests.read(out.toByteArray(), "flat.mhl");
        assertThat(read.header().process()).isEqualTo(Process.FLATTEN);
        assertThat(read.entries()).hasSize(3).allSatisfy(entry -> {
            assertThat(entry.checksums()).extracting(Checksum::algorithm).containsExactly(MD5, XXH64);
            assertThat(entry.action()).isEqualTo(Action.ORIGINAL);
        });
    }

    private static ManifestEntry entry(
            String path, long size, Action action, Instant modified, @Nullable String previous, Checksum... checksums) {
        return new ManifestEntry(path, size, List.of(checksums), action, 1, previous, modified);
    }
}
