package rollbook.verification;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.RollWarning;
import rollbook.manifest.RollWarning.Kind;
import rollbook.offload.Roll;

/** What the documents about a roll say, held against the log and against what is listed for the other rolls. */
final class LogChecks {
    /** Bytes may differ from minutes × format by one part in so many: common practice, no source. */
    private static final long TOLERANCE = 10;

    private LogChecks() {}

    /**
     * A clip as one document lists it for the roll.
     *
     * @param ofCard whether the document describes the card itself
     * @param sizeBytes null where the document gives no sizes
     * @param otherRolls the rolls for which a clip of that name is listed too
     * @param namedBy another logged roll whose code the clip's name begins with, or null
     */
    record ListedClip(
            String clip,
            boolean ofCard,
            long files,
            @Nullable Long sizeBytes,
            List<String> otherRolls,
            @Nullable String namedBy) {}

    /** @param expectedBytes what the roll's minutes make in its format, or null if nobody knows */
    static List<RollWarning> of(Roll roll, @Nullable Long expectedBytes, List<ListedClip> clips) {
        List<RollWarning> warnings = new ArrayList<>();
        Long size = roll.sizeBytes();
        Long capacity = roll.cardCapacityBytes();
        if (size != null && capacity != null && size > capacity) {
            warnings.add(new RollWarning(Kind.LARGER_THAN_CARD, 1, List.of()));
        }
        if (size != null && expectedBytes != null && Math.abs(size - expectedBytes) > expectedBytes / TOLERANCE) {
            warnings.add(new RollWarning(Kind.OTHER_THAN_MINUTES, 1, List.of()));
        }
        add(warnings, Kind.CODE_USED_TWICE, usedTwice(clips));
        add(warnings, Kind.CLIP_IN_TWO_ROLLS, inTwoRolls(clips));
        return warnings;
    }

    /** Two cards with the same code show in clips that are called by another roll, or that aren't the same each time. */
    private static List<String> usedTwice(List<ListedClip> clips) {
        List<String> cases = new ArrayList<>();
        byName(clips).forEach((name, listed) -> {
            listed.stream()
                    .map(ListedClip::namedBy)
                    .filter(Objects::nonNull)
                    .findFirst()
                    .ifPresent(other -> cases.add(name + " → " + other));
            List<ListedClip> ofCard = listed.stream().filter(ListedClip::ofCard).toList();
            if (ofCard.stream().anyMatch(clip -> differ(ofCard.get(0), clip))) {
                cases.add(name);
            }
        });
        return cases;
    }

    /** A list of part of the files is no contradiction. */
    private static boolean differ(ListedClip one, ListedClip other) {
        return one.files() == other.files()
                && one.sizeBytes() != null
                && other.sizeBytes() != null
                && !one.sizeBytes().equals(other.sizeBytes());
    }

    private static List<String> inTwoRolls(List<ListedClip> clips) {
        List<String> cases = new ArrayList<>();
        byName(clips).forEach((name, listed) -> {
            String others = listed.stream()
                    .flatMap(clip -> clip.otherRolls().stream())
                    .distinct()
                    .sorted()
                    .collect(Collectors.joining(", "));
            if (!others.isEmpty()) {
                cases.add(name + " → " + others);
            }
        });
        return cases;
    }

    private static Map<String, List<ListedClip>> byName(List<ListedClip> clips) {
        return clips.stream().collect(Collectors.groupingBy(ListedClip::clip, TreeMap::new, Collectors.toList()));
    }

    private static void add(List<RollWarning> warnings, Kind kind, List<String> cases) {
        if (!cases.isEmpty()) {
            int shown = Math.min(RollWarning.MOST_EXAMPLES, cases.size());
            warnings.add(new RollWarning(kind, cases.size(), cases.subList(0, shown)));
        }
    }
}
