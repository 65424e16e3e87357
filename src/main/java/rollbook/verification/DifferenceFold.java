package rollbook.verification;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.FileFinding.Kind;
import rollbook.manifest.PathRange;
import rollbook.verification.Verdicts.Difference;

/** Brings the files that don't agree together by clip, and files that follow each other into ranges. */
final class DifferenceFold {
    /** What is worst stands first. */
    private static final List<Kind> ORDER = List.of(
            Kind.DIFFERENT,
            Kind.LISTED_TWICE,
            Kind.MISSING,
            Kind.NAME_ONLY,
            Kind.SIZE_ONLY,
            Kind.MOVED,
            Kind.SPELLED_OTHERWISE,
            Kind.EXTRA);

    private DifferenceFold() {}

    /**
     * Files of which the same is to be said.
     *
     * @param elsewhere where moved files lie, # for the digits of a number that stayed the same; null for others
     * @param sources what holds a good version of each of them
     */
    record Line(Kind kind, PathRange files, @Nullable String elsewhere, List<GoodVersions.Source> sources) {}

    /** @param clip null for files that belong to no clip; they come last */
    record OfClip(@Nullable String clip, List<Line> lines) {}

    static List<OfClip> fold(List<Difference> differences, Function<Difference, List<GoodVersions.Source>> sources) {
        record Same(Kind kind, @Nullable String elsewhere, List<GoodVersions.Source> sources) {}
        Map<Same, List<String>> paths = new LinkedHashMap<>();
        for (Difference difference : differences) {
            Same same = new Same(difference.kind(), elsewhere(difference), sources.apply(difference));
            paths.computeIfAbsent(same, key -> new ArrayList<>()).add(difference.path());
        }
        Map<String, List<Line>> byClip = new TreeMap<>();
        List<Line> others = new ArrayList<>();
        paths.forEach((same, files) -> PathRange.fold(files).forEach(range -> {
            List<Line> lines =
                    range.clip() == null ? others : byClip.computeIfAbsent(range.clip(), clip -> new ArrayList<>());
            lines.add(new Line(same.kind(), range, same.elsewhere(), same.sources()));
        }));
        List<OfClip> folded = new ArrayList<>();
        byClip.forEach((clip, lines) -> folded.add(new OfClip(clip, sorted(lines))));
        if (!others.isEmpty()) {
            folded.add(new OfClip(null, sorted(others)));
        }
        return folded;
    }

    private static List<Line> sorted(List<Line> lines) {
        return lines.stream()
                .sorted(Comparator.comparingInt((Line line) -> rank(line.kind()))
                        .thenComparing(line -> line.files().head()))
                .toList();
    }

    private static int rank(Kind kind) {
        int rank = ORDER.indexOf(kind);
        return rank < 0 ? ORDER.size() : rank;
    }

    private static @Nullable String elsewhere(Difference difference) {
        if (difference.otherPath() == null) {
            return null;
        }
        PathRange here = PathRange.of(difference.path());
        PathRange there = PathRange.of(difference.otherPath());
        boolean sameNumber =
                here.isNumbered() && there.isNumbered() && here.numbers().equals(there.numbers());
        return sameNumber ? there.pattern() : difference.otherPath();
    }
}
