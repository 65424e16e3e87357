package rollbook.manifest;

import static org.assertj.core.api.Assertions.assertThat;
import static rollbook.manifest.Manifests.file;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rollbook.manifest.ManifestEntry.Action;
import rollbook.manifest.RollWarning.Kind;

class RollChecksTests {
    private static final Instant FIRST_DAY = Instant.parse("2026-03-02T00:00:00Z");
    private static final Instant SENT = Instant.parse("2026-03-20T12:00:00Z");

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

    /** The three ways of numbering: common practice, no source. */
    @Test
    void findsFramesThatAreLeftOutHoweverTheyAreNumberedAndWhereverTheyStart() {
        List<String> paths = new ArrayList<>();
        for (int frame = 86_400; frame < 88_000; frame++) {
            if (frame < 87_043 || frame > 87_187) {
                paths.add("A014C001/A014C001.%07d.dpx".formatted(frame));
                paths.add("A014C002/right_%07d.dpx".formatted(frame));
                paths.add("A014C002/left%06d.dpx".formatted(frame));
            }
        }
        assertThat(check(paths.toArray(String[]::new)))
                .containsExactly(new RollWarning(
                        Kind.FRAME_GAP,
                        3 * 145,
                        List.of(
                                "A014C001/A014C001.0087043–0087187.dpx",
                                "A014C002/right_0087043–0087187.dpx",
                                "A014C002/left087043–087187.dpx")));
    }

    @Test
    void theOrderInWhichFramesAreListedChangesNothing() {
        long seed = System.nanoTime();
        Random random = new Random(seed);
        List<String> paths = new ArrayList<>();
        IntStream.range(0, 3_000)
                .filter(frame -> frame % 500 != 7)
                .forEach(frame -> paths.add("A014C001/x.%04d.dpx".formatted(frame)));
        List<RollWarning> inOrder = check(paths.toArray(String[]::new));
        Collections.shuffle(paths, random);

        assertThat(check(paths.toArray(String[]::new))).as("seed %d", seed).isEqualTo(inOrder);
        assertThat(inOrder).extracting(RollWarning::count).containsExactly(6L);
    }

    @Test
    void numbersThatDoNotFollowEachOtherAreNoFrames() {
        assertThat(check(
                        "A014C001_20260301.xml",
                        "A014C001_20260302.xml",
                        "A014C001_20260409.xml",
                        "still010.jpg",
                        "still020.jpg",
                        "still030.jpg",
                        "x12.tif",
                        "x14.tif",
                        "x99999999999999999999.tif"))
                .isEmpty();
    }

    @Test
    void findsEmptyFilesBySizeOrByTheDigestOfNothing() {
        Checksum ofNothing = Checksum.parse(ChecksumAlgorithm.MD5, Manifests.EMPTY_MD5);
        Checksum otherAlgorithm = Checksum.assumed(
                ChecksumAlgorithm.MD5,
                Checksum.parse(ChecksumAlgorithm.XXH128, "99aa06d3014798d86001c324468d497f")
                        .digest());

        assertThat(check(
                        file("size", 0L),
                        file("digest", null, ofNothing),
                        file("assumed", null, otherAlgorithm),
                        file("full", 1L),
                        file("unknown", null, Manifests.digest(ChecksumAlgorithm.MD5, 1))))
                .containsExactly(new RollWarning(Kind.EMPTY_FILE, 3, List.of("size", "digest", "assumed")));
    }

    @Test
    void findsNamesThatDifferInCaseOnly() {
        assertThat(check("Clips/a.mxf", "clips/A.mxf", "b.mxf", "Straße.mov", "STRASSE.MOV"))
                .containsExactly(new RollWarning(Kind.NAME_COLLISION, 2, List.of("clips/A.mxf", "STRASSE.MOV")));
        assertThat(check("x.001.dpx", "x.002.dpx", "X.002.dpx", "X.003.dpx", "X.2.dpx"))
                .containsExactly(new RollWarning(Kind.NAME_COLLISION, 1, List.of("X.002.dpx")));
    }

    /** Names that systems leave behind: common practice, no source. */
    @Test
    void hiddenAndSystemFilesAreToldApartAndNotCheckedFurther() {
        ManifestEntry[] files = {
            file(".DS_Store", 0L),
            file("Clips/._A014C001.mxf", 4_096L),
            file("Clips/A014C001.mxf", 9L),
            file("System Volume Information/x", 0L),
            file(".Trashes/A014C009.mxf", 0L),
            file("Clips/Thumbs.db", 1L),
            file("Clips/desktop.ini", 1L)
        };
        RollSummary summary = summary(files);

        assertThat(summary.warnings()).singleElement().satisfies(warning -> {
            assertThat(warning.kind()).isEqualTo(Kind.SYSTEM_FILE);
            assertThat(warning.count()).isEqualTo(6);
        });
        assertThat(summary.clips()).containsExactly(new ClipSummary("A014C001", "Clips", 1, 9L, List.of()));
    }

    @Test
    void findsDatesBeforeTheProductionAndAfterTheListWasSent() {
        assertThat(check(
                        dated("A014C001.mxf", FIRST_DAY),
                        dated("A014C002.mxf", FIRST_DAY.minusSeconds(1)),
                        dated("A014C003.mxf", SENT),
                        dated("A014C004.mxf", SENT.plusSeconds(1)),
                        dated("A014C005.mxf", null)))
                .containsExactly(
                        new RollWarning(Kind.DATED_BEFORE, 1, List.of("A014C002.mxf")),
                        new RollWarning(Kind.DATED_AFTER, 1, List.of("A014C004.mxf")));
    }

    @Test
    void findsTheSameFileUnderTheNamesOfTwoClips() {
        Checksum one = Manifests.digest(ChecksumAlgorithm.MD5, 1);
        Checksum two = Manifests.digest(ChecksumAlgorithm.MD5, 2);
        assertThat(check(
                        file("A014C001.mxf", 5L, one),
                        file("bak/A014C001.mxf", 5L, one),
                        file("A014C002.mxf", 5L, two),
                        file("A014C003.mxf", 5L, one)))
                .containsExactly(new RollWarning(Kind.SAME_CONTENT, 1, List.of("A014C001.mxf = A014C003.mxf")));
    }

    @Test
    void countsAllButShowsSome() {
        List<ManifestEntry> empty = new ArrayList<>();
        for (int i = 0; i < 1_000; i++) {
            empty.add(file("f" + i, 0L));
        }

        RollWarning warning = check(empty.toArray(ManifestEntry[]::new)).get(0);

        assertThat(warning.count()).isEqualTo(1_000);
        assertThat(warning.examples()).hasSize(20);
    }

    @Test
    void aClipsSummaryHasItsFilesBytesFramesAndGaps() {
        List<ManifestEntry> files = new ArrayList<>();
        for (int frame = 10; frame <= 40; frame++) {
            if (frame != 21 && frame != 22) {
                files.add(file("A014_C002_0301/f_%05d.ari".formatted(frame), 100L));
            }
        }
        files.add(file("A014_C002_0301/f.wav", 7L));
        files.add(file("a014c001.mov", null));
        files.add(file("notes.txt", 3L));

        assertThat(summary(files.toArray(ManifestEntry[]::new)).clips())
                .containsExactly(
                        new ClipSummary("A014C001", "", 1, null, List.of()),
                        new ClipSummary(
                                "A014C002",
                                "A014_C002_0301",
                                30,
                                2_907L,
                                List.of(new FrameSequence(5, 10, 40, 29, List.of(new NumberRange(21, 22))))));
    }

    /** Lists of several algorithms repeat every path. */
    @Test
    void aFileThatIsListedTwiceIsCountedOnceAndItsBytesAreNotGuessed() {
        assertThat(summary(file("A014C001.mxf", 5L), file("A014C001.mxf", 5L)).clips())
                .containsExactly(new ClipSummary("A014C001", "", 1, null, List.of()));
    }

    @Test
    void eachPartOfADocumentIsSummedUpByItself() {
        RollSurvey survey = new RollSurvey(List.of("A014", "A015"), "all.md5", null);
        RollChecks checks = new RollChecks(null, null);
        for (String path : List.of(
                "day/A014/A014C001.mxf",
                "day/A014/A014C003.mxf",
                "day/A015/A015C001.mxf",
                "day/A015/a015c001.mxf",
                "day/sound/.x")) {
            survey.add(file(path, 1L));
            checks.accept(file(path, 1L));
        }
        var summaries = checks.summaries(survey.split());

        assertThat(summaries).containsOnlyKeys("day/A014", "day/A015", "day");
        assertThat(summaries.get("day/A014").warnings())
                .containsExactly(new RollWarning(Kind.CLIP_GAP, 1, List.of("A014C002")));
        assertThat(summaries.get("day/A015").warnings())
                .containsExactly(new RollWarning(Kind.NAME_COLLISION, 1, List.of("a015c001.mxf")));
        assertThat(summaries.get("day").warnings())
                .containsExactly(new RollWarning(Kind.SYSTEM_FILE, 1, List.of("sound/.x")));
    }

    @Test
    void millionsOfDifferentNamesTakeLimitedRoomAndThoseLeftOutAreCounted() {
        RollChecks checks = new RollChecks(null, null);
        for (int i = 0; i < 250_000; i++) {
            checks.accept(file("x" + i + "y", 1L));
        }
        checks.accept(file("9".repeat(300) + ".dpx", 1L));
        checks.accept(file("a/".repeat(3_000) + "b", 1L));

        assertThat(checks.summaries(whole()).get("").warnings())
                .containsExactly(new RollWarning(Kind.NOT_LOOKED_AT, 50_002, List.of()));
    }

    private static ManifestEntry dated(String path, Instant modified) {
        return new ManifestEntry(path, 1L, List.of(), Action.NONE, 1, null, modified);
    }

    private static List<RollWarning> check(String... paths) {
        List<ManifestEntry> entries = new ArrayList<>();
        for (String path : paths) {
            entries.add(file(path, 1L));
        }
        return check(entries.toArray(ManifestEntry[]::new));
    }

    private static List<RollWarning> check(ManifestEntry... entries) {
        return summary(entries).warnings();
    }

    private static RollSummary summary(ManifestEntry... entries) {
        RollChecks checks = new RollChecks(FIRST_DAY, SENT);
        for (ManifestEntry entry : entries) {
            checks.accept(entry);
        }
        return checks.summaries(whole()).get("");
    }

    /** A document that is one part. */
    private static RollSplit whole() {
        return new RollSplit(
                new RollPaths(new RollCodes(List.of()), null), true, List.of(new RollPart("", null, false, 0, 0)));
    }
}
