package rollbook.manifest;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import rollbook.manifest.FileFinding.Kind;
import rollbook.manifest.ManifestEntry.Action;

/**
 * A copy's files compared with those of the reference, both with paths relative to the roll's folder.
 *
 * <p>Digests that the reference itself marks as failed are not used: only {@code original} and {@code verified} ones may
 * verify (ASC MHL 1.0, 5.6.4).
 */
public final class ManifestComparison {
    /** The list of a copy that went wholly wrong helps nobody past this; the counts stay exact. */
    public static final int FINDINGS_KEPT = 10_000;

    private final FileListing reference;
    private final FileListing copy;
    private final Consumer<FileFinding> receiver;
    private final Map<Kind, Long> counts = new EnumMap<>(Kind.class);
    private final List<FileFinding> findings = new ArrayList<>();
    private long same;
    private long equalWithoutReadBack;
    private long differingStated;
    private boolean failedInReference;
    private boolean algorithmSettled;
    private boolean bytesReversed;

    private ManifestComparison(FileListing reference, FileListing copy, Consumer<FileFinding> receiver) {
        this.reference = reference;
        this.copy = copy;
        this.receiver = receiver;
    }

    /** Keeps the first {@value #FINDINGS_KEPT} findings. */
    public static ManifestComparison of(FileListing reference, FileListing copy) {
        return of(reference, copy, finding -> {});
    }

    /** @param receiver is handed every finding, also those that are not kept */
    public static ManifestComparison of(FileListing reference, FileListing copy, Consumer<FileFinding> receiver) {
        ManifestComparison comparison = new ManifestComparison(reference, copy, receiver);
        comparison.run();
        return comparison;
    }

    /** What is not the same, in the order of the reference, then what the copy has beyond it; the first ones of many. */
    public List<FileFinding> findings() {
        return List.copyOf(findings);
    }

    public long count(Kind kind) {
        return kind == Kind.SAME ? same : counts.getOrDefault(kind, 0L);
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
        return count(Kind.DIFFERENT) > 0 && differingStated == 0 && same == 0;
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

    private void run() {
        UnmatchedFiles unmatched = new UnmatchedFiles(reference, copy);
        FileListing.Reader expected = reference.reader();
        FileListing.Reader found = copy.reader();
        for (int at = reference.next(0); at >= 0; at = reference.next(at + 1)) {
            expected.at(at);
            int inCopy = found.find(expected);
            if (inCopy >= 0) {
                unmatched.isThere(inCopy);
            }
            if (reference.isContradicted(at)) {
                add(FileFinding.of(expected.entry(), Kind.LISTED_TWICE, reference.contradiction(at)));
            } else if (inCopy < 0) {
                unmatched.isMissing(at);
            } else if (copy.isContradicted(inCopy)) {
                add(FileFinding.of(found.entry(), Kind.LISTED_TWICE, copy.contradiction(inCopy)));
            } else {
                compare(expected, found);
            }
        }
        settle(unmatched);
    }

    private void compare(FileListing.Reader expected, FileListing.Reader found) {
        if (expected.action() != Action.FAILED
                && expected.plainlySameChecksums(found)
                && !expected.sizesDiffer(found)) {
            same++;
            countReadBack(found.action());
        } else {
            compare(expected.entry(), found.entry());
        }
    }

    private void compare(ManifestEntry expected, ManifestEntry found) {
        Kind kind = kind(usable(expected), found);
        if (kind == Kind.SAME) {
            same++;
            countReadBack(found.action());
            algorithmSettled |= Agreement.settlesAlgorithm(expected.checksums(), found.checksums());
            bytesReversed |= Agreement.reversesBytes(expected.checksums(), found.checksums());
        } else {
            add(FileFinding.of(expected, kind, found));
            countStated(kind, expected, found);
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
        return UnmatchedFiles.usable(expected);
    }

    private void settle(UnmatchedFiles unmatched) {
        unmatched.pair();
        FileListing.Reader expected = reference.reader();
        FileListing.Reader found = copy.reader();
        for (int i = 0; i < unmatched.missing(); i++) {
            ManifestEntry missing = expected.at(unmatched.missing(i)).entry();
            int elsewhere = unmatched.counterpart(i);
            if (elsewhere < 0) {
                add(FileFinding.missing(missing));
            } else {
                foundElsewhere(missing, found.at(elsewhere).entry());
            }
        }
        for (int at = unmatched.nextExtra(0); at >= 0; at = unmatched.nextExtra(at + 1)) {
            ManifestEntry extra = found.at(at).entry();
            add(
                    copy.isContradicted(at)
                            ? FileFinding.of(extra, Kind.LISTED_TWICE, copy.contradiction(at))
                            : FileFinding.extra(extra));
        }
    }

    private void foundElsewhere(ManifestEntry expected, ManifestEntry found) {
        Kind kind = kind(usable(expected), found);
        if (kind == Kind.SAME) {
            boolean spelled = FoldedPath.of(expected.path()).equals(FoldedPath.of(found.path()));
            add(FileFinding.elsewhere(expected, spelled ? Kind.SPELLED_OTHERWISE : Kind.MOVED, found));
            countReadBack(found.action());
        } else {
            add(FileFinding.elsewhere(expected, kind, found));
            countStated(kind, expected, found);
        }
    }

    private void countStated(Kind kind, ManifestEntry expected, ManifestEntry found) {
        boolean assumed = expected.checksums().stream().anyMatch(Checksum::assumed)
                || found.checksums().stream().anyMatch(Checksum::assumed);
        if (kind == Kind.DIFFERENT && (!assumed || FileListing.sizesDiffer(expected, found))) {
            differingStated++;
        }
    }

    private void countReadBack(Action action) {
        if (action != Action.VERIFIED) {
            equalWithoutReadBack++;
        }
    }

    private void add(FileFinding finding) {
        counts.merge(finding.kind(), 1L, Long::sum);
        if (findings.size() < FINDINGS_KEPT) {
            findings.add(finding);
        }
        receiver.accept(finding);
    }
}
