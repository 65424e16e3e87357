package rollbook.manifest;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Objects;
import rollbook.manifest.ManifestEntry.Action;

/**
 * The files that only one side lists, and which of them are the same file after all. Each extra file of the copy stands
 * for one file of the reference at most, so that two equal files are not proven by one.
 *
 * <p>A file whose path is spelled otherwise and that has equal digests is found first; then one that its document says
 * was renamed, then any other with equal digests. What is left over and differs from a left-over extra file in
 * spelling only is that file with other bytes.
 */
final class UnmatchedFiles {
    private static final int NONE = -1;

    private final FileListing reference;
    private final FileListing copy;
    private final BitSet there = new BitSet();
    private final BitSet taken = new BitSet();
    private int[] missing = new int[16];
    private int[] counterparts = {};
    private int count;

    private final PositionsByKey bySpelling = new PositionsByKey(taken);
    private final PositionsByKey byEarlierPath = new PositionsByKey(taken);
    private final PositionsByKey byDigest = new PositionsByKey(taken);
    private final PositionsByKey byPath = new PositionsByKey(taken);
    private final FileListing.Reader inCopy;

    UnmatchedFiles(FileListing reference, FileListing copy) {
        this.reference = reference;
        this.copy = copy;
        this.inCopy = copy.reader();
    }

    /** The reference lists the copy's file of this position. */
    void isThere(int position) {
        there.set(position);
    }

    /** The copy doesn't list the reference's file of this position. */
    void isMissing(int position) {
        if (count == missing.length) {
            missing = Arrays.copyOf(missing, count * 2);
        }
        missing[count++] = position;
    }

    int missing() {
        return count;
    }

    /** Position in the reference of a file that the copy doesn't list under its path. */
    int missing(int number) {
        return missing[number];
    }

    /** Position of the copy's file that is the missing one of this number, or negative if there is none. */
    int counterpart(int number) {
        return counterparts[number];
    }

    /** The next file of the copy, from this position on, that stands for none of the reference; or negative. */
    int nextExtra(int position) {
        int next = copy.next(position);
        while (next >= 0 && (there.get(next) || taken.get(next))) {
            next = copy.next(next + 1);
        }
        return next;
    }

    void pair() {
        counterparts = new int[count];
        Arrays.fill(counterparts, NONE);
        if (count == 0 || nextExtra(0) < 0) {
            return;
        }
        sortExtras();
        pairEach(this::spelledOtherwise);
        pairEach(this::renamed);
        pairEach(this::elsewhere);
        pairEach(this::otherBytes);
    }

    private void sortExtras() {
        for (int at = nextExtra(0); at >= 0; at = nextExtra(at + 1)) {
            if (!copy.isContradicted(at)) {
                ManifestEntry extra = inCopy.at(at).entry();
                bySpelling.add(key(FoldedPath.of(extra.path())), at);
                byPath.add(key(extra.path()), at);
                if (extra.previousPath() != null) {
                    byEarlierPath.add(key(extra.previousPath()), at);
                }
                for (Checksum checksum : extra.checksums()) {
                    byDigest.add(checksum.key(), at);
                }
            }
        }
    }

    private interface Search {
        int positionFor(ManifestEntry missing);
    }

    private void pairEach(Search search) {
        FileListing.Reader expected = reference.reader();
        for (int i = 0; i < count; i++) {
            if (counterparts[i] == NONE) {
                counterparts[i] =
                        search.positionFor(usable(expected.at(missing[i]).entry()));
            }
        }
    }

    private int spelledOtherwise(ManifestEntry missing) {
        String folded = FoldedPath.of(missing.path());
        return bySpelling.take(key(folded), position -> {
            ManifestEntry extra = extra(position);
            return FoldedPath.of(extra.path()).equals(folded) && sameBytes(missing, extra);
        });
    }

    private int renamed(ManifestEntry missing) {
        int found = byEarlierPath.take(key(missing.path()), position -> {
            ManifestEntry extra = extra(position);
            return missing.path().equals(extra.previousPath()) && sameBytes(missing, extra);
        });
        if (found >= 0 || missing.previousPath() == null) {
            return found;
        }
        return byPath.take(key(missing.previousPath()), position -> {
            ManifestEntry extra = extra(position);
            return extra.path().equals(missing.previousPath()) && sameBytes(missing, extra);
        });
    }

    private int elsewhere(ManifestEntry missing) {
        for (Checksum checksum : missing.checksums()) {
            int found = byDigest.take(checksum.key(), position -> sameBytes(missing, extra(position)));
            if (found >= 0) {
                return found;
            }
        }
        return NONE;
    }

    private int otherBytes(ManifestEntry missing) {
        String folded = FoldedPath.of(missing.path());
        return bySpelling.take(
                key(folded),
                position -> Objects.equals(FoldedPath.of(extra(position).path()), folded));
    }

    private ManifestEntry extra(int position) {
        return inCopy.at(position).entry();
    }

    private static boolean sameBytes(ManifestEntry missing, ManifestEntry extra) {
        return !FileListing.sizesDiffer(missing, extra)
                && Agreement.of(missing.checksums(), extra.checksums()) == Agreement.SAME;
    }

    /** The entry without digests that its own document marks as failed. */
    static ManifestEntry usable(ManifestEntry expected) {
        return expected.action() != Action.FAILED
                ? expected
                : new ManifestEntry(
                        expected.path(),
                        expected.sizeBytes(),
                        List.of(),
                        expected.action(),
                        expected.line(),
                        expected.previousPath(),
                        expected.modified());
    }

    private static long key(String text) {
        byte[] bytes = PackedEntries.bytes(text);
        return PathIndex.hash(bytes, 0, bytes.length);
    }
}
