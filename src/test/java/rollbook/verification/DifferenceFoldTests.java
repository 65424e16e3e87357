package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rollbook.inventory.CardState;
import rollbook.inventory.Condition;
import rollbook.manifest.ChecksumAlgorithm;
import rollbook.manifest.FileFinding.Kind;
import rollbook.manifest.Verdict;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.production.MediaKind;
import rollbook.production.Rendition;
import rollbook.verification.DifferenceFold.Line;
import rollbook.verification.DifferenceFold.OfClip;
import rollbook.verification.GoodVersions.Source;
import rollbook.verification.Verdicts.Difference;

/** Folding differences for people, finding good versions, and the lists of what to copy again: all pure. */
class DifferenceFoldTests {
    private static final UUID REFERENCE = UUID.randomUUID();
    private static final Source SHUTTLE = new Source("SHUTTLE-1", "Set");
    private static final Source CARD = new Source("CARD-1", null);

    private final Copy bad = copy("SHUTTLE-2", Condition.GOOD, Rendition.AS_RECORDED);

    @Test
    void clipsComeInTheirOrderAndTheWorstOfEachFirst() {
        List<OfClip> folded = DifferenceFold.fold(
                List.of(
                        missing("notes.txt"),
                        missing("A014C002.0001.dpx"),
                        missing("A014C002.0002.dpx"),
                        difference(Kind.DIFFERENT, "A014C002.0007.dpx"),
                        difference(Kind.EXTRA, "A014C001.mxf")),
                none -> List.of());

        assertThat(folded).extracting(OfClip::clip).containsExactly("A014C001", "A014C002", null);
        assertThat(folded.get(1).lines())
                .extracting(Line::kind, line -> line.files().numbersText())
                .containsExactly(
                        org.assertj.core.groups.Tuple.tuple(Kind.DIFFERENT, "7"),
                        org.assertj.core.groups.Tuple.tuple(Kind.MISSING, "1–2"));
    }

    @Test
    void framesThatMovedTogetherAreOneLine() {
        List<Difference> moved = new ArrayList<>();
        for (int frame = 1; frame <= 50; frame++) {
            moved.add(new Difference(
                    Kind.MOVED, "a/f.%04d.dpx".formatted(frame), "", "", "b/c/f.%04d.dpx".formatted(frame)));
        }
        moved.add(new Difference(Kind.MOVED, "a/f.0051.dpx", "", "", "b/c/f.0099.dpx"));

        assertThat(DifferenceFold.fold(moved, none -> List.of()).get(0).lines())
                .extracting(Line::elsewhere)
                .containsExactly("b/c/f.####.dpx", "b/c/f.0099.dpx");
    }

    /** Property: every difference is in exactly one line, with its kind and its sources. */
    @Test
    void everyDifferenceIsToldOnceWithItsKindAndSources() {
        for (int round = 0; round < 500; round++) {
            long seed = System.nanoTime();
            Random random = new Random(seed);
            Map<String, Difference> byPath = new HashMap<>();
            Map<Difference, List<Source>> sources = new HashMap<>();
            for (int i = random.nextInt(200); i >= 0; i--) {
                String path = "A014C%03d/x.%04d.dpx".formatted(1 + random.nextInt(3), random.nextInt(100));
                Difference difference = difference(Kind.values()[1 + random.nextInt(3)], path);
                if (byPath.putIfAbsent(path, difference) == null) {
                    sources.put(difference, random.nextBoolean() ? List.of(SHUTTLE) : List.of(SHUTTLE, CARD));
                }
            }
            Set<String> told = new HashSet<>();
            for (OfClip clip : DifferenceFold.fold(List.copyOf(byPath.values()), sources::get)) {
                for (Line line : clip.lines()) {
                    for (String path : line.files().paths()) {
                        assertThat(told.add(path)).as("seed %d, %s", seed, path).isTrue();
                        Difference difference = byPath.get(path);
                        assertThat(line.kind()).as("seed %d, %s", seed, path).isEqualTo(difference.kind());
                        assertThat(line.sources()).as("seed %d, %s", seed, path).isEqualTo(sources.get(difference));
                    }
                }
            }
            assertThat(told).as("seed %d", seed).isEqualTo(byPath.keySet());
        }
    }

    @Test
    void aFileIsGoodOnAProvenCopyAndOnAFailedOneThatItIsNotAmongTheDifferencesOf() {
        Copy failed = copy("SHUTTLE-1", Condition.GOOD, Rendition.AS_RECORDED);
        Copy proven = copy("VAULT-1", Condition.GOOD, Rendition.AS_RECORDED);
        GoodVersions good = good(
                true,
                Map.of(
                        failed,
                        verdict(failed, Verdict.FAILED, REFERENCE, 2),
                        proven,
                        verdict(proven, Verdict.PROVEN, REFERENCE, 0)),
                Map.of(failed, List.of(missing("x"), difference(Kind.MOVED, "y"))));

        assertThat(good.of(missing("x"))).extracting(Source::itemCode).containsExactly("VAULT-1", "CARD-1");
        assertThat(good.of(missing("y")))
                .extracting(Source::itemCode)
                .containsExactly("SHUTTLE-1", "VAULT-1", "CARD-1");
        assertThat(good.of(difference(Kind.EXTRA, "y")))
                .as("nothing to restore")
                .isEmpty();
    }

    @Test
    void whatNobodyKnowsToBeGoodIsGoodNowhere() {
        Copy quarantined = copy("Q", Condition.QUARANTINED, Rendition.AS_RECORDED);
        Copy encoded = copy("E", Condition.GOOD, Rendition.ENCODED);
        Copy unknown = copy("U", Condition.GOOD, Rendition.AS_RECORDED);
        Copy elsewhere = copy("R", Condition.GOOD, Rendition.AS_RECORDED);
        Copy cut = copy("C", Condition.GOOD, Rendition.AS_RECORDED);
        GoodVersions good = good(
                false,
                Map.of(
                        quarantined, verdict(quarantined, Verdict.PROVEN, REFERENCE, 0),
                        encoded, verdict(encoded, Verdict.PROVEN, REFERENCE, 0),
                        unknown, verdict(unknown, Verdict.UNKNOWN, REFERENCE, 0),
                        elsewhere, verdict(elsewhere, Verdict.PROVEN, UUID.randomUUID(), 0),
                        cut, verdict(cut, Verdict.FAILED, REFERENCE, 10_001),
                        bad, verdict(bad, Verdict.FAILED, REFERENCE, 0)),
                Map.of(cut, List.of(missing("other"))));
        assertThat(good.of(missing("x"))).isEmpty();
    }

    @Test
    void theListsToCopyAgainHoldWhatIsWrongOrMissingWithTheReferencesDigests() {
        String md5 = "900150983cd24fb0d6963f7d28e17f72";
        String sha1 = "a9993e364706816aba3e25717850c26c9cd0d89d";
        CopyAgain again = new CopyAgain(List.of(
                new Difference(Kind.MISSING, "a.mxf", "3 B  MD5 " + md5 + ", SHA-1 " + sha1, "", null),
                new Difference(Kind.DIFFERENT, "b\nc.mxf", "MD5 " + md5, "MD5 " + md5, null),
                new Difference(Kind.MISSING, "none.mxf", "3 B  ", "", null),
                new Difference(Kind.EXTRA, "extra.mxf", "", "MD5 " + md5, null),
                new Difference(Kind.MOVED, "moved.mxf", "MD5 " + md5, "MD5 " + md5, "m.mxf")));

        assertThat(again.files()).isEqualTo(3);
        assertThat(again.algorithms()).isEqualTo(Map.of(ChecksumAlgorithm.MD5, 2, ChecksumAlgorithm.SHA1, 1));
        assertThat(text(again.checksums(ChecksumAlgorithm.MD5))).isEqualTo(md5 + "  a.mxf\n\\" + md5 + "  b\\nc.mxf\n");
        assertThat(text(again.checksums(ChecksumAlgorithm.SHA1))).isEqualTo(sha1 + "  a.mxf\n");
        assertThat(text(again.paths('\0'))).isEqualTo("a.mxf\0b\nc.mxf\0none.mxf\0");
    }

    private GoodVersions good(
            boolean onCard, Map<Copy, CopyVerdict> verdicts, Map<Copy, List<Difference>> differences) {
        Map<UUID, CopyVerdict> newest = new HashMap<>();
        verdicts.forEach((copy, verdict) -> newest.put(copy.id(), verdict));
        Map<Long, List<Difference>> byVerdict = new HashMap<>();
        differences.forEach((copy, list) -> byVerdict.put(newest.get(copy.id()).id(), list));
        List<Copy> copies = verdicts.keySet().stream()
                .sorted(java.util.Comparator.comparing(Copy::itemCode))
                .toList();
        return GoodVersions.of(
                roll(onCard), bad, verdict(bad, Verdict.FAILED, REFERENCE, 1), copies, newest, byVerdict);
    }

    private static CopyVerdict verdict(Copy copy, Verdict verdict, UUID reference, long missing) {
        return new CopyVerdict(
                (long) copy.itemCode().hashCode(),
                copy.id(),
                verdict,
                List.of(),
                reference,
                UUID.randomUUID(),
                new CopyVerdict.Counts(9, 0, missing, 0, 0, 0, 0, 0, 0),
                Instant.EPOCH,
                null);
    }

    private static Copy copy(String itemCode, Condition condition, Rendition rendition) {
        UUID id = UUID.randomUUID();
        return new Copy(
                id,
                id,
                id,
                itemCode,
                MediaKind.DRIVE,
                condition,
                id,
                "Set",
                false,
                "",
                null,
                rendition,
                Instant.EPOCH,
                null,
                null);
    }

    private static Roll roll(boolean onCard) {
        UUID id = UUID.randomUUID();
        return new Roll(
                id,
                "A014",
                id,
                "A",
                id,
                "Main",
                id,
                1,
                LocalDate.of(2031, 3, 3),
                id,
                "CARD-1",
                null,
                CardState.HELD,
                onCard,
                id,
                Instant.EPOCH,
                null,
                null,
                null,
                "",
                1);
    }

    private static Difference missing(String path) {
        return difference(Kind.MISSING, path);
    }

    private static Difference difference(Kind kind, String path) {
        return new Difference(kind, path, "", "", null);
    }

    private static String text(byte[] list) {
        return new String(list, StandardCharsets.UTF_8);
    }
}
