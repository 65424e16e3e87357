package rollbook.manifest;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rollbook.manifest.RollWarning.Kind;

/** Checks of a roll's files that need no second list. */
public final class RollChecks {
    private static final int EXAMPLES = 20;
    /** No file system in use has longer names; matching an endless one would take long. */
    private static final int MAX_NAME = 1_024;
    /** A clip is called by its roll, C and a number from 001 upwards (common practice, no source). */
    private static final Pattern CLIP = Pattern.compile("(.*[A-Za-z]\\d+)C(\\d{3,5})(?:[^0-9].*)?", Pattern.DOTALL);

    private RollChecks() {}

    public static List<RollWarning> check(FileListing files) {
        List<RollWarning> warnings = new ArrayList<>();
        addIfAny(warnings, Kind.CLIP_GAP, gaps(files));
        addIfAny(warnings, Kind.EMPTY_FILE, emptyFiles(files));
        addIfAny(warnings, Kind.NAME_COLLISION, collisions(files));
        return warnings;
    }

    private static void addIfAny(List<RollWarning> warnings, Kind kind, List<String> cases) {
        if (!cases.isEmpty()) {
            warnings.add(new RollWarning(kind, cases.size(), cases.subList(0, Math.min(EXAMPLES, cases.size()))));
        }
    }

    private static List<String> gaps(FileListing files) {
        Map<String, BitSet> clips = new TreeMap<>();
        for (ManifestEntry entry : files.entries()) {
            String name = entry.path().substring(entry.path().lastIndexOf('/') + 1);
            Matcher clip = CLIP.matcher(name);
            if (name.length() <= MAX_NAME && clip.matches()) {
                clips.computeIfAbsent(clip.group(1), roll -> new BitSet()).set(Integer.parseInt(clip.group(2)));
            }
        }
        List<String> gaps = new ArrayList<>();
        clips.forEach((roll, numbers) -> addGaps(roll, numbers, gaps));
        return gaps;
    }

    private static void addGaps(String roll, BitSet numbers, List<String> gaps) {
        int last = numbers.length() - 1;
        for (int from = numbers.nextClearBit(1); from < last; from = numbers.nextClearBit(numbers.nextSetBit(from))) {
            int to = numbers.nextSetBit(from) - 1;
            String first = String.format(Locale.ROOT, "%sC%03d", roll, from);
            gaps.add(from == to ? first : first + String.format(Locale.ROOT, "–C%03d", to));
        }
    }

    private static List<String> emptyFiles(FileListing files) {
        List<String> empty = new ArrayList<>();
        for (ManifestEntry entry : files.entries()) {
            if (entry.isEmpty()) {
                empty.add(entry.path());
            }
        }
        return empty;
    }

    private static List<String> collisions(FileListing files) {
        Map<String, String> byFoldedPath = new HashMap<>();
        List<String> collisions = new ArrayList<>();
        for (ManifestEntry entry : files.entries()) {
            String first = byFoldedPath.putIfAbsent(entry.path().toLowerCase(Locale.ROOT), entry.path());
            if (first != null) {
                collisions.add(entry.path());
            }
        }
        return collisions;
    }
}
