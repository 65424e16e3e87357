package rollbook.manifest;

import java.util.List;

/**
 * What an archive holds, judged by itself.
 *
 * @param format the kind of archive
 * @param members in the order in which they speak: of one history the later generation after the earlier
 * @param findings what a person should know, the weightiest first
 */
public record ArchiveContents(ManifestFormat format, List<ArchiveMember> members, List<ArchiveFinding> findings) {
    public ArchiveContents {
        members = List.copyOf(members);
        findings = List.copyOf(findings);
    }
}
