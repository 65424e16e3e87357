package rollbook.manifest;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rollbook.manifest.ArchiveFinding.Weight;

/**
 * A bag, or what describes it, in an archive (RFC 8493). That it is complete and that its text files are valid are two
 * things; whether the payload is valid only a reading of the copy can tell.
 *
 * @param base its folder in the archive, ended by a slash, or empty
 * @param manifests paths in the archive of the payload's manifests, by name; together they are one statement
 * @param plainPercents whether its version is before 1.0, which codes nothing in paths
 */
record Bag(
        String base, Map<String, ArchiveMember.State> manifests, boolean plainPercents, List<ArchiveFinding> findings) {
    Bag {
        manifests = Collections.unmodifiableMap(new LinkedHashMap<>(manifests));
        findings = List.copyOf(findings);
    }

    boolean isComplete() {
        return findings.stream().noneMatch(finding -> finding.weight() == Weight.INCOMPLETE);
    }

    /** Whether no text file has other bytes than a tag manifest says. */
    boolean isUnaltered() {
        return findings.stream().noneMatch(finding -> finding.weight() == Weight.WRONG);
    }
}
