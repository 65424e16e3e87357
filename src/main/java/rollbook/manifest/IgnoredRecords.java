package rollbook.manifest;

import java.util.List;

/**
 * Looks for files that a hash list lists though its own patterns leave them out (ASC MHL 1.0, 5.6.1.2). A remark, not a
 * fault: the digest is no worse for it.
 */
final class IgnoredRecords {
    /** Bounds the work: a hostile list could have a thousand patterns of a thousand stars for a million files. */
    private static final long MOST_STEPS = 2_000_000_000L;

    private final IgnorePatterns patterns;
    private final long patternCharacters;
    private final ManifestRemarks remarks;
    private String directory = "";
    private boolean directoryIgnored;
    private long steps;

    IgnoredRecords(List<String> patterns, ManifestRemarks remarks) {
        this.patterns = new IgnorePatterns(patterns);
        this.patternCharacters = patterns.stream().mapToLong(String::length).sum();
        this.remarks = remarks;
    }

    void look(ManifestEntry entry) {
        String path = entry.path();
        steps += patternCharacters * path.length() / 16; // most patterns fail at their first character
        if (patternCharacters == 0 || steps > MOST_STEPS) {
            return;
        }
        String parent = IgnorePatterns.directoryOf(path);
        if (!parent.equals(directory)) {
            directory = parent;
            directoryIgnored = patterns.ignoreDirectory(parent);
        }
        if (directoryIgnored || patterns.matches(path, false)) {
            remarks.add(ManifestRemark.Kind.RECORD_IGNORED, entry.line(), path);
        }
    }
}
