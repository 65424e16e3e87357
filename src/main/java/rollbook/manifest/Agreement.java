package rollbook.manifest;

import java.util.List;
import java.util.function.BiPredicate;

/** What two sets of checksums of one file say of each other. */
enum Agreement {
    /** At least one algorithm in common, and all common ones are equal. */
    SAME,
    /** A common algorithm differs. */
    DIFFERENT,
    /** No algorithm in common. */
    NOTHING_IN_COMMON;

    /**
     * Compares pair by pair. An assumed algorithm is only a guess among those of its digest length: equal bytes confirm
     * the other side's algorithm (no accident makes two algorithms print the same digest), unequal bytes against
     * another stated algorithm say nothing.
     *
     * <p>Digests of the XXH family are equal, too, when one is printed in the other byte order, which a list need not
     * mark: that the bytes of another file's digest are those in reverse is as unlikely as that they are the same.
     */
    static Agreement of(List<Checksum> left, List<Checksum> right) {
        boolean same = false;
        boolean different = false;
        for (Checksum one : left) {
            if (confirmed(one, right)) {
                same = true;
                continue;
            }
            for (Checksum other : right) {
                different |= sameFunction(one, other) && !confirmed(other, left);
            }
        }
        if (different) {
            return DIFFERENT;
        }
        return same ? SAME : NOTHING_IN_COMMON;
    }

    /** Whether a digest whose algorithm was assumed equals one whose algorithm is stated. */
    static boolean settlesAlgorithm(List<Checksum> left, List<Checksum> right) {
        return anyPair(left, right, (one, other) -> one.assumed() != other.assumed() && equal(one, other));
    }

    /** Whether a digest equals one of the other side in the other byte order only. */
    static boolean reversesBytes(List<Checksum> left, List<Checksum> right) {
        return anyPair(left, right, (one, other) -> equal(one, other) && !one.sameBytes(other));
    }

    private static boolean anyPair(
            List<Checksum> left, List<Checksum> right, BiPredicate<Checksum, Checksum> condition) {
        return left.stream().anyMatch(one -> right.stream().anyMatch(other -> condition.test(one, other)));
    }

    private static boolean confirmed(Checksum one, List<Checksum> others) {
        for (Checksum other : others) {
            if (equal(one, other)) {
                return true;
            }
        }
        return false;
    }

    private static boolean equal(Checksum one, Checksum other) {
        boolean comparable = sameFunction(one, other) || one.assumed() || other.assumed();
        return comparable && (one.sameBytes(other) || one.mayBeXxh() && other.mayBeXxh() && one.reversedBytes(other));
    }

    /** A C4 ID is a SHA-512 digest in other digits. */
    private static boolean sameFunction(Checksum one, Checksum other) {
        return function(one) == function(other);
    }

    private static ChecksumAlgorithm function(Checksum checksum) {
        return checksum.algorithm() == ChecksumAlgorithm.C4 ? ChecksumAlgorithm.SHA512 : checksum.algorithm();
    }
}
