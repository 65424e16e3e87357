package rollbook.manifest;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Looks through a document's files to divide them over the production's rolls. A folder called by a roll's code holds
 * that roll. Other files stay together where they can only be one roll, else each top folder becomes a part of its own
 * that a person assigns; nothing is dropped. Use: {@link #add} every entry, {@link #split}, then place each entry in a
 * second reading.
 */
public final class RollSurvey {
    /** Equal to no folder, which all end with a slash. */
    private static final String NO_FOLDER = "?";

    private final RollCodes codes;
    private final RollPaths paths;
    private final @Nullable String rootRoll;
    private final @Nullable String documentRoll;
    private final Map<String, Tally> known = new LinkedHashMap<>();
    private final Map<String, Tally> loose = new LinkedHashMap<>();
    private String lastFolder = NO_FOLDER;
    private RollPaths.@Nullable Match lastMatch;
    private Tally lastTally = new Tally();

    /** @param rootFolder the covered folder that an ASC MHL document's name gives, or null */
    public RollSurvey(Collection<String> rollCodes, String documentName, @Nullable String rootFolder) {
        this.codes = new RollCodes(rollCodes);
        this.rootRoll = rootFolder == null ? null : codes.ofFolder(rootFolder);
        this.documentRoll = codes.onlyOneIn(documentName);
        this.paths = new RollPaths(codes, rootRoll);
    }

    private static final class Tally {
        final Set<String> rolls = new HashSet<>();
        long files;
        long sizeBytes;

        void add(ManifestEntry entry, @Nullable String roll) {
            files++;
            sizeBytes = Math.addExact(sizeBytes, entry.sizeBytes() == null ? 0 : entry.sizeBytes());
            if (roll != null) {
                rolls.add(roll);
            }
        }

        void add(Tally other) {
            rolls.addAll(other.rolls);
            files += other.files;
            sizeBytes = Math.addExact(sizeBytes, other.sizeBytes);
        }

        @Nullable
        String onlyRoll() {
            return rolls.size() == 1 ? rolls.iterator().next() : null;
        }
    }

    /** {@link ArithmeticException} when the sizes add up past the range of a long. */
    public void add(ManifestEntry entry) {
        String path = entry.path();
        int nameStart = path.lastIndexOf('/') + 1;
        if (nameStart != lastFolder.length() || !path.startsWith(lastFolder)) {
            enter(path.substring(0, nameStart));
        }
        lastTally.add(entry, lastMatch != null ? lastMatch.rollCode() : codes.ofClip(path.substring(nameStart)));
    }

    /** Files of one folder mostly follow each other, and the folders alone tell where they belong. */
    private void enter(String folder) {
        lastFolder = folder;
        lastMatch = paths.match(folder);
        lastTally = lastMatch != null ? tally(known, lastMatch.folder()) : tally(loose, RollPaths.topFolder(folder));
    }

    public RollSplit split() {
        List<RollPart> parts = new ArrayList<>();
        known.forEach((folder, tally) -> parts.add(part(folder, tally, tally.onlyRoll(), false)));
        Tally all = new Tally();
        loose.values().forEach(all::add);
        boolean together = oneRoll(all);
        if (together && all.files > 0) {
            parts.add(part("", all, guess(all), true));
        } else {
            loose.forEach((folder, tally) -> parts.add(part(folder, tally, tally.onlyRoll(), true)));
        }
        return new RollSplit(paths, together, parts);
    }

    /** Whether the files outside of known folders are to be taken as one part. */
    private boolean oneRoll(Tally all) {
        if (all.rolls.size() > 1 || rootRoll != null && !all.rolls.isEmpty() && !all.rolls.contains(rootRoll)) {
            return false;
        }
        long folders =
                loose.keySet().stream().filter(folder -> !folder.isEmpty()).count();
        return rootRoll != null || known.isEmpty() && guess(all) != null || folders <= 1 && known.isEmpty();
    }

    /** The clips' own names are nearer to the truth than the name that someone gave the document. */
    private @Nullable String guess(Tally all) {
        if (rootRoll != null) {
            return rootRoll;
        }
        return all.rolls.isEmpty() && known.isEmpty() ? documentRoll : all.onlyRoll();
    }

    private static Tally tally(Map<String, Tally> tallies, String folder) {
        return tallies.computeIfAbsent(folder, name -> new Tally());
    }

    private static RollPart part(String folder, Tally tally, @Nullable String roll, boolean guessed) {
        return new RollPart(folder, roll, guessed && roll != null, tally.files, tally.sizeBytes);
    }
}
