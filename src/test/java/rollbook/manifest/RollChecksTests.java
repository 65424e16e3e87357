package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.manifest.Manifests.file;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import rollbook.manifest.RollWarning.Kind;

class RollChecksTests {

    @Test
    void aSoundRollHasNoWarnings() {
        assertThat(check("A014C001_1.mxf", "A014C002_1.mxf", "A014C003_1.mxf", "report.txt"))
                .isEmpty();
    }

    /** Clip numbers count from 001 without a gap: common practice, no source. */
    @Test
    void findsGapsInClipNumbers() {
        assertThat(check("Clips/A014C002_1.mxf", "Clips/A014C003.mxf", "A014C007.mxf", "B007C001.mxf"))
                .containsExactly(new RollWarning(Kind.CLIP_GAP, 2, List.of("A014C001", "A014C004–C006")));
    }

    @Test
    void severalFilesOfAClipAreOneNumber() {
        assertThat(check("A014C001.mxf", "A014C001.xml", "A014C001/1.ari", "A014C002.mxf"))
                .isEmpty();
    }

    @Test
    void findsEmptyFilesBySizeOrByTheDigestOfNothing() {
        Checksum ofNothing = Checksum.parse(ChecksumAlgorithm.MD5, Manifests.EMPTY_MD5);
        Checksum otherAlgorithm = Checksum.assumed(
                ChecksumAlgorithm.MD5,
                Checksum.parse(ChecksumAlgorithm.XXH128, "99aa06d3014798d86001c324468d497f")
                        .digest());
        FileListing files = FileListing.of(List.of(
                file("size", 0L),
                file("digest", null, ofNothing),
                file("assumed", null, otherAlgorithm),
                file("full", 1L),
                file("unknown", null, Manifests.digest(ChecksumAlgorithm.MD5, 1))));

        assertThat(RollChecks.check(files))
                .containsExactly(new RollWarning(Kind.EMPTY_FILE, 3, List.of("size", "digest", "assumed")));
    }

    @Test
    void findsNamesThatDifferInCaseOnly() {
        assertThat(check("Clips/a.mxf", "clips/A.mxf", "b.mxf"))
                .containsExactly(new RollWarning(Kind.NAME_COLLISION, 1, List.of("clips/A.mxf")));
    }

    @Test
    void countsAllButShowsSome() {
        List<ManifestEntry> empty = new ArrayList<>();
        for (int i = 0; i < 1_000; i++) {
            empty.add(file("f" + i, 0L));
        }

        RollWarning warning = RollChecks.check(FileListing.of(empty)).get(0);

        assertThat(warning.count()).isEqualTo(1_000);
        assertThat(warning.examples()).hasSize(20);
    }

    private static List<RollWarning> check(String... paths) {
        List<ManifestEntry> entries = new ArrayList<>();
        for (String path : paths) {
            entries.add(file(path, 1L));
        }
        return RollChecks.check(FileListing.of(entries));
    }
}
