package rollbook.manifest;

import java.util.List;

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

    private static boolean confirmed(Checksum one, List<Checksum> others) {
        for (Checksum other : others) {
            boolean comparable = sameFunction(one, other) || one.assumed() || other.assumed();
            if (comparable && one.sameBytes(other)) {
                return true;
            }
        }
        return false;
    }

    /** A C4 ID is a SHA-512 digest in other digits. */
    private static boolean sameFunction(Checksum one, Checksum other) {
        return function(one) == function(other);
    }

    private static ChecksumAlgorithm function(Checksum checksum) {
        return checksum.algorithm() == ChecksumAlgorithm.C4 ? ChecksumAlgorithm.SHA512 : checksum.algorithm();
    }
}
