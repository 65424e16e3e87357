package rollbook.manifest;

import java.util.List;
import java.util.Set;
import rollbook.manifest.ArchiveFinding.Weight;

/**
 * A bag, or what describes it, in an archive (RFC 8493). That it is complete and that its text files are valid are two
 * things; whether the payload is valid only a reading of the copy can tell.
 *
 * @param base its folder in the archive, ended by a slash, or empty
 * @param manifests paths in the archive of the payload's manifests, by name; together they are one statement
 * @param differing those of them that have other bytes than a tag manifest says
 * @param unreadable those of them that are no manifest
 */
record Bag(
        String base,
        List<String> manifests,
        Set<String> differing,
        Set<String> unreadable,
        List<ArchiveFinding> findings) {
    Bag {
        manifests = List.copyOf(manifests);
        differing = Set.copyOf(differing);
        unreadable = Set.copyOf(unreadable);
        findings = List.copyOf(findings);
    }

    boolean complete() {
        return findings.stream().noneMatch(finding -> finding.weight() == Weight.INCOMPLETE);
    }

    /** Whether no text file has other bytes than a tag manifest says. */
    boolean unaltered() {
        return findings.stream().noneMatch(finding -> finding.weight() == Weight.WRONG);
    }
}
