package rollbook.manifest;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import rollbook.manifest.FileFinding.Kind;
import rollbook.manifest.ManifestEntry.Action;

/**
 * A copy's files compared with those of the reference, both with paths relative to the roll's folder.
 *
 * <p>Digests that the reference itself marks as failed are not used: only {@code original} and {@code verified} ones may
 * verify (ASC MHL 1.0, 5.6.4).
 */
public final class ManifestComparison {
    private final FileListing reference;
    private final FileListing copy;
    private final Map<Kind, Long> counts = new EnumMap<>(Kind.class);
    private final List<FileFinding> findings = new ArrayList<>();
    private final List<ManifestEntry> missing = new ArrayList<>();
    private long equalWithoutReadBack;
    private long differingStated;
    private boolean failedInReference;
    private boolean algorithmSettled;
    private boolean bytesReversed;

    private ManifestComparison(FileListing reference, FileListing copy) {
        this.reference = reference;
        this.copy = copy;
    }

    public static ManifestComparison of(FileListing reference, FileListing copy) {
        ManifestComparison comparison = new ManifestComparison(reference, copy);
        reference.entries().forEach(comparison::compare);
        comparison.settleMissingAndExtra();
        return comparison;
    }

    /** Everything that is not the same, in the order of the reference, then what the copy has beyond it. */
    public List<FileFinding> findings() {
        return List.copyOf(findings);
    }

    public long count(Kind kind) {
        return counts.getOrDefault(kind, 0L);
    }

    public long referenceFiles() {
        return reference.size();
    }

    public long copyFiles() {
        return copy.size();
    }

    boolean referenceHasChecksums() {
        return reference.hasChecksums();
    }

    boolean copyHasChecksums() {
        return copy.hasChecksums();
    }

    /** Files with equal digests that the copy's manifest does not claim to have verified. */
    long equalWithoutReadBack() {
        return equalWithoutReadBack;
    }

    /** Nothing equal, and every difference rests on an algorithm that was only assumed. */
    boolean mayBeOtherAlgorithm() {
        return count(Kind.DIFFERENT) > 0 && differingStated == 0 && count(Kind.SAME) == 0;
    }

    boolean failedInReference() {
        return failedInReference;
    }

    /** Of some file only an equal digest of the other side tells which algorithm made this side's. */
    public boolean algorithmSettled() {
        return algorithmSettled;
    }

    /** Some file's digests are equal in the other byte order only. */
    boolean bytesReversed() {
        return bytesReversed;
    }

    private void compare(ManifestEntry expected) {
        ManifestEntry contradiction = reference.contradiction(expected.path());
        ManifestEntry found = copy.get(expected.path());
        if (contradiction != null) {
            add(FileFinding.of(expected, Kind.LISTED_TWICE, contradiction));
        } else if (found == null) {
            missing.add(expected);
        } else if (copy.contradiction(expected.path()) != null) {
            add(listedTwice(found));
        } else {
            compare(expected, found);
        }
    }

    private void compare(ManifestEntry expected, ManifestEntry found) {
        Kind kind = kind(usable(expected), found);
        if (kind == Kind.SAME) {
            tally(kind);
            countReadBack(found);
            algorithmSettled |= Agreement.settlesAlgorithm(expected.checksums(), found.checksums());
            bytesReversed |= Agreement.reversesBytes(expected.checksums(), found.checksums());
        } else {
            add(FileFinding.of(expected, kind, found));
        }
        boolean assumed = expected.checksums().stream().anyMatch(Checksum::assumed)
                || found.checksums().stream().anyMatch(Checksum::assumed);
        if (kind == Kind.DIFFERENT && (!assumed || FileListing.sizesDiffer(expected, found))) {
            differingStated++;
        }
    }

    private static Kind kind(ManifestEntry expected, ManifestEntry found) {
        if (FileListing.sizesDiffer(expected, found)) {
            return Kind.DIFFERENT;
        }
        Agreement agreement = Agreement.of(expected.checksums(), found.checksums());
        if (agreement == Agreement.SAME) {
            return Kind.SAME;
        }
        if (agreement == Agreement.DIFFERENT || found.action() == Action.FAILED) {
            return Kind.DIFFERENT;
        }
        return expected.sizeBytes() != null && found.sizeBytes() != null ? Kind.SIZE_ONLY : Kind.NAME_ONLY;
    }

    private ManifestEntry usable(ManifestEntry expected) {
        if (expected.action() != Action.FAILED) {
            return expected;
        }
        failedInReference = true;
        return new ManifestEntry(expected.path(), expected.sizeBytes(), List.of(), expected.action(), expected.line());
    }

    private void settleMissingAndExtra() {
        List<ManifestEntry> extras = new ArrayList<>();
        for (ManifestEntry entry : copy.entries()) {
            if (reference.get(entry.path()) == null) {
                extras.add(entry);
            }
        }
        MovedFiles moved = new MovedFiles(
                missing.isEmpty()
                        ? List.of()
                        : extras.stream()
                                .filter(extra -> copy.contradiction(extra.path()) == null)
                                .toList());
        for (ManifestEntry expected : missing) {
            ManifestEntry found = moved.take(usable(expected));
            add(found == null ? FileFinding.missing(expected) : FileFinding.moved(expected, found));
            if (found != null) {
                countReadBack(found);
            }
        }
        for (ManifestEntry extra : extras) {
            if (copy.contradiction(extra.path()) != null) {
                add(listedTwice(extra));
            } else if (!moved.isTaken(extra)) {
                add(FileFinding.extra(extra));
            }
        }
    }

    private FileFinding listedTwice(ManifestEntry first) {
        ManifestEntry second = copy.contradiction(first.path());
        return FileFinding.of(first, Kind.LISTED_TWICE, second == null ? first : second);
    }

    private void countReadBack(ManifestEntry found) {
        if (found.action() != Action.VERIFIED) {
            equalWithoutReadBack++;
        }
    }

    private void add(FileFinding finding) {
        tally(finding.kind());
        findings.add(finding);
    }

    private void tally(Kind kind) {
        counts.merge(kind, 1L, Long::sum);
    }
}
