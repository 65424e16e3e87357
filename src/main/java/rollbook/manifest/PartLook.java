package rollbook.manifest;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.RollWarning.Kind;

/** The clips and the warnings of one part of a document, from its files in groups. */
final class PartLook {
    private final int folderLength;
    private final List<FileGroup> groups;
    private final List<FileGroup> systemGroups;
    private final long notLookedAt;

    PartLook(String folder, List<FileGroup> groups, long notLookedAt) {
        this.folderLength = folder.isEmpty() ? 0 : folder.length() + 1;
        this.groups = groups.stream().filter(group -> !group.isSystem()).toList();
        this.systemGroups = groups.stream().filter(FileGroup::isSystem).toList();
        this.notLookedAt = notLookedAt;
    }

    RollSummary summary() {
        List<RollWarning> warnings = new ArrayList<>();
        add(warnings, clipGaps());
        add(warnings, frameGaps());
        add(warnings, numbers(Kind.EMPTY_FILE, groups, FileGroup::empty));
        add(warnings, collisions());
        add(warnings, numbers(Kind.DATED_BEFORE, groups, FileGroup::early));
        add(warnings, numbers(Kind.DATED_AFTER, groups, FileGroup::late));
        add(warnings, sameContent());
        add(warnings, numbers(Kind.SYSTEM_FILE, systemGroups, group -> group.numbers));
        Tally left = new Tally(Kind.NOT_LOOKED_AT);
        left.count = notLookedAt;
        add(warnings, left);
        return new RollSummary(clips(), warnings);
    }

    /** Counts all, keeps some. */
    private static final class Tally {
        private static final int LONGEST = 500;

        final Kind kind;
        final List<String> examples = new ArrayList<>();
        long count;

        Tally(Kind kind) {
            this.kind = kind;
        }

        void add(long more, String example) {
            count += more;
            if (examples.size() < RollWarning.MOST_EXAMPLES) {
                examples.add(example.length() <= LONGEST ? example : example.substring(0, LONGEST) + "…");
            }
        }
    }

    private static void add(List<RollWarning> warnings, Tally tally) {
        if (tally.count > 0) {
            warnings.add(new RollWarning(tally.kind, tally.count, tally.examples));
        }
    }

    /** Clips count from 001. */
    private Tally clipGaps() {
        Map<String, NumberRuns> byRoll = new TreeMap<>();
        for (FileGroup group : groups) {
            ClipName clip = group.clip();
            if (clip != null) {
                byRoll.computeIfAbsent(clip.roll(), roll -> new NumberRuns()).add(clip.number());
            }
        }
        Tally gaps = new Tally(Kind.CLIP_GAP);
        byRoll.forEach((roll, numbers) -> {
            numbers.add(0);
            for (NumberRange gap : numbers.gaps()) {
                String first = roll + "C" + NumberRange.padded(gap.first(), 3);
                gaps.add(1, gap.size() == 1 ? first : first + "–C" + NumberRange.padded(gap.last(), 3));
            }
        });
        return gaps;
    }

    private Tally frameGaps() {
        Tally missing = new Tally(Kind.FRAME_GAP);
        for (FileGroup group : groups) {
            if (group.isSequence()) {
                group.numbers.gaps().forEach(gap -> missing.add(gap.size(), group.path(gap, folderLength)));
            }
        }
        return missing;
    }

    private Tally numbers(Kind kind, List<FileGroup> some, Function<FileGroup, @Nullable NumberRuns> choice) {
        Tally tally = new Tally(kind);
        for (FileGroup group : some) {
            NumberRuns chosen = choice.apply(group);
            if (chosen != null) {
                chosen.ranges().forEach(range -> tally.add(range.size(), group.path(range, folderLength)));
            }
        }
        return tally;
    }

    private Tally collisions() {
        Map<String, NumberRuns> taken = new HashMap<>();
        Tally collisions = new Tally(Kind.NAME_COLLISION);
        for (FileGroup group : groups) {
            NumberRuns before =
                    taken.computeIfAbsent(group.folded(PartLook::folded, folderLength), name -> new NumberRuns());
            before.common(group.numbers)
                    .forEach(range -> collisions.add(range.size(), group.path(range, folderLength)));
            before.addAll(group.numbers);
        }
        return collisions;
    }

    /** Upper case first, so that ß and SS, ſ and S come together (full case folding, nearly). */
    private static String folded(String text) {
        String folded = text.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
        return Normalizer.isNormalized(folded, Normalizer.Form.NFC)
                ? folded
                : Normalizer.normalize(folded, Normalizer.Form.NFC);
    }

    /** Frames of a clip may well be alike; whole files of two clips may not. */
    private Tally sameContent() {
        Map<Checksum, FileGroup> known = new HashMap<>();
        Tally same = new Tally(Kind.SAME_CONTENT);
        for (FileGroup group : groups) {
            Checksum digest = group.digest();
            if (group.isNumbered() || group.clip() == null || digest == null || group.empty() != null) {
                continue;
            }
            FileGroup other = known.putIfAbsent(digest, group);
            if (other != null && !clip(other).equals(clip(group))) {
                same.add(1, path(other) + " = " + path(group));
            }
        }
        return same;
    }

    private String path(FileGroup unnumbered) {
        return unnumbered.path(new NumberRange(0, 0), folderLength);
    }

    private static String clip(FileGroup group) {
        ClipName clip = group.clip();
        return clip == null ? "" : clip.text();
    }

    private List<ClipSummary> clips() {
        return groups.stream()
                .filter(group -> group.clip() != null)
                .collect(Collectors.groupingBy(PartLook::clip, TreeMap::new, Collectors.toList()))
                .entrySet()
                .stream()
                .map(clip -> clip(clip.getKey(), clip.getValue()))
                .toList();
    }

    private ClipSummary clip(String name, List<FileGroup> files) {
        List<FileGroup> largestFirst = files.stream()
                .sorted(Comparator.comparingLong(FileGroup::files).reversed())
                .toList();
        Long sizeBytes = 0L;
        for (FileGroup group : files) {
            Long more = group.sizeBytes();
            sizeBytes = sizeBytes == null || more == null ? null : Long.valueOf(Math.addExact(sizeBytes, more));
        }
        return new ClipSummary(
                name,
                largestFirst.get(0).folder(folderLength),
                files.stream().mapToLong(FileGroup::files).sum(),
                sizeBytes,
                largestFirst.stream()
                        .filter(FileGroup::isSequence)
                        .map(FrameSequence::of)
                        .toList());
    }
}
