package rollbook.manifest;

import org.jspecify.annotations.Nullable;

/**
 * What comparing a copy with its reference found for one file.
 *
 * @param path the file in the reference; for an extra file, in the copy
 * @param expected what the reference says, null for an extra file
 * @param found what the copy says, null for a missing file; for a file listed twice, its second mention
 * @param otherPath where the file was found if its path is another one, or spelled otherwise
 */
public record FileFinding(
        String path,
        Kind kind,
        @Nullable Facts expected,
        @Nullable Facts found,
        @Nullable String otherPath) {

    /** The outcomes for one file. */
    public enum Kind {
        /** Equal in every algorithm that both sides have. */
        SAME,
        /** Another size, another digest, or marked as failed by the copy's own manifest. */
        DIFFERENT,
        /** In the reference only. */
        MISSING,
        /** In the copy only. */
        EXTRA,
        /** Same digest, and same size where both are known, under another path. */
        MOVED,
        /** Same digest, and a path that differs in letter case or in characters that a file system replaces. */
        SPELLED_OTHERWISE,
        /** No algorithm in common, equal sizes. */
        SIZE_ONLY,
        /** No algorithm in common, and at least one size is unknown: only the name agrees. */
        NAME_ONLY,
        /** One document gives contradicting digests or sizes for the path. */
        LISTED_TWICE;

        public String messageKey() {
            return "manifest.finding." + name();
        }
    }

    /** What one document says of the file: its size in bytes if given, its digests with their algorithms. */
    public record Facts(@Nullable Long sizeBytes, String checksums) {
        static Facts of(ManifestEntry entry) {
            return new Facts(entry.sizeBytes(), Checksum.text(entry.checksums()));
        }
    }

    static FileFinding of(ManifestEntry expected, Kind kind, ManifestEntry found) {
        return new FileFinding(expected.path(), kind, Facts.of(expected), Facts.of(found), null);
    }

    static FileFinding missing(ManifestEntry expected) {
        return new FileFinding(expected.path(), Kind.MISSING, Facts.of(expected), null, null);
    }

    static FileFinding extra(ManifestEntry found) {
        return new FileFinding(found.path(), Kind.EXTRA, null, Facts.of(found), null);
    }

    static FileFinding elsewhere(ManifestEntry expected, Kind kind, ManifestEntry found) {
        return new FileFinding(expected.path(), kind, Facts.of(expected), Facts.of(found), found.path());
    }
}
