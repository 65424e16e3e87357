package rollbook.verification;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.manifest.ChecksumAlgorithm;
import rollbook.manifest.PathRange;
import rollbook.offload.Copies;
import rollbook.offload.Copy;
import rollbook.offload.Roll;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.web.Display;
import rollbook.web.NotFoundException;

/** One verdict's files that don't agree, for people: by clip, in sentences, with where good versions are. */
@Component
class Differences {
    private static final int LISTED = 1_000;

    private final Rolls rolls;
    private final Copies copies;
    private final Verdicts verdicts;
    private final Display display;

    Differences(Rolls rolls, Copies copies, Verdicts verdicts, Display display) {
        this.rolls = rolls;
        this.copies = copies;
        this.verdicts = verdicts;
        this.display = display;
    }

    /**
     * What is to be said of some files.
     *
     * @param files their path, with # for the digits of a number
     * @param good where good versions are; empty where there is nothing to restore
     * @param lost they must be copied again, and nothing is known to hold a good version
     */
    record Line(String sentence, String files, String good, boolean lost) {}

    record Group(@Nullable String clip, List<Line> lines) {}

    /**
     * The page of a verdict.
     *
     * @param newest the copy's newest verdict, if that is another one; else null
     * @param again how many of the files that were kept must be copied again
     * @param algorithms for how many of those the reference has a digest of each algorithm
     * @param files the first differences, file by file
     * @param notKept differences that were counted and not kept
     */
    record View(
            String sentence,
            Roll roll,
            Copy copy,
            CopyVerdict verdict,
            @Nullable CopyVerdict newest,
            List<String> reasons,
            List<Group> groups,
            int again,
            Map<ChecksumAlgorithm, Integer> algorithms,
            List<Verdicts.Difference> files,
            long notListed,
            long notKept) {}

    private record Judged(
            Roll roll, Copy copy, CopyVerdict verdict, List<Copy> copies, Map<UUID, CopyVerdict> newest) {}

    /** @throws NotFoundException if the roll has no such verdict */
    View view(Membership viewer, UUID rollId, long verdictId) {
        UUID production = viewer.productionId();
        Judged judged = judged(production, rollId, verdictId);
        CopyVerdict verdict = judged.verdict();
        List<Verdicts.Difference> kept = verdicts.differences(production, verdictId);
        List<Long> others = judged.newest().values().stream()
                .map(CopyVerdict::id)
                .filter(Objects::nonNull)
                .toList();
        GoodVersions good = GoodVersions.of(
                judged.roll(),
                judged.copy(),
                verdict,
                judged.copies(),
                judged.newest(),
                verdicts.differences(production, others, Verdicts.DIFFERENCES_KEPT));
        CopyAgain again = new CopyAgain(kept);
        CopyVerdict newest = judged.newest().get(verdict.copyId());
        return new View(
                sentence(judged, kept, good),
                judged.roll(),
                judged.copy(),
                verdict,
                newest == null || verdict.id() == null || verdict.id().equals(newest.id()) ? null : newest,
                ReasonKeys.texts(display, verdict),
                groups(DifferenceFold.fold(kept, good::of), judged.copy()),
                again.files(),
                again.algorithms(),
                kept.subList(0, Math.min(LISTED, kept.size())),
                Math.max(0, kept.size() - LISTED),
                verdict.counts().notSame() - kept.size());
    }

    /** The files to copy again, as far as they were kept. */
    record AgainList(Roll roll, Copy copy, CopyAgain files, boolean cut) {}

    /** @throws NotFoundException if the roll has no such verdict */
    AgainList again(Membership viewer, UUID rollId, long verdictId) {
        Judged judged = judged(viewer.productionId(), rollId, verdictId);
        List<Verdicts.Difference> kept = verdicts.differences(viewer.productionId(), verdictId);
        return new AgainList(
                judged.roll(),
                judged.copy(),
                new CopyAgain(kept),
                judged.verdict().counts().notSame() > kept.size());
    }

    private Judged judged(UUID production, UUID rollId, long verdictId) {
        Roll roll = rolls.get(production, rollId);
        Map<UUID, CopyVerdict> newest = new LinkedHashMap<>();
        CopyVerdict wanted = null;
        for (CopyVerdict verdict : verdicts.history(production, rollId)) {
            newest.putIfAbsent(verdict.copyId(), verdict);
            wanted = Objects.equals(verdict.id(), verdictId) ? verdict : wanted;
        }
        if (wanted == null) {
            throw new NotFoundException();
        }
        UUID copyId = wanted.copyId();
        List<Copy> all = copies.ofRoll(production, rollId);
        Copy copy =
                all.stream().filter(one -> one.id().equals(copyId)).findFirst().orElseThrow(NotFoundException::new);
        return new Judged(roll, copy, wanted, all, newest);
    }

    private String sentence(Judged judged, List<Verdicts.Difference> kept, GoodVersions good) {
        CopyVerdict.Counts counts = judged.verdict().counts();
        long bad = counts.wrong() + counts.missing();
        if (bad == 0) {
            return counts.notSame() == 0
                    ? display.text("verification.differences.none")
                    : display.text(
                            "verification.differences.sentence.nothing-to-do",
                            judged.copy().itemCode());
        }
        long nowhere = kept.stream()
                .filter(GoodVersions::isToCopyAgain)
                .filter(difference -> good.of(difference).isEmpty())
                .count();
        return display.text(
                "verification.differences.sentence", bad, judged.copy().itemCode(), nowhere);
    }

    private List<Group> groups(List<DifferenceFold.OfClip> folded, Copy copy) {
        List<Group> groups = new ArrayList<>();
        for (DifferenceFold.OfClip ofClip : folded) {
            groups.add(new Group(
                    ofClip.clip(),
                    ofClip.lines().stream().map(line -> line(line, copy)).toList()));
        }
        return groups;
    }

    private Line line(DifferenceFold.Line line, Copy copy) {
        PathRange files = line.files();
        boolean mustBeGood = GoodVersions.isToCopyAgain(line.kind());
        String good = line.sources().stream()
                .map(source -> source.placeName() == null
                        ? display.text("verification.differences.good.card", source.itemCode())
                        : display.text("verification.differences.good.copy", source.itemCode(), source.placeName()))
                .reduce((one, other) -> one + ", " + other)
                .map(list -> display.text("verification.differences.good", list))
                .orElse("");
        String key = "verification.difference." + line.kind().name() + (isFrames(files) ? ".frames" : ".file");
        String sentence = isFrames(files)
                ? display.text(
                        key,
                        files.numbersText(),
                        files.clip() == null ? name(files.pattern()) : files.clip(),
                        copy.itemCode(),
                        files.files(),
                        line.elsewhere())
                : display.text(key, name(files.paths().get(0)), copy.itemCode(), line.elsewhere());
        return new Line(
                sentence,
                isFrames(files) ? files.pattern() : files.paths().get(0),
                good,
                mustBeGood && line.sources().isEmpty());
    }

    /** The number of a single file may well be a date. */
    private static boolean isFrames(PathRange files) {
        return files.isNumbered() && files.files() > 1;
    }

    private static String name(String path) {
        return path.substring(path.lastIndexOf('/') + 1);
    }
}
