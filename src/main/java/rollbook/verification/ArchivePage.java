package rollbook.verification;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.manifest.ArchiveFinding;
import rollbook.manifest.ArchiveMember;

/**
 * What an archive holds.
 *
 * @param members the first ones, those with something wrong before the others
 * @param counts how many there are of each state
 * @param unassigned parts of all of them that nobody has assigned yet
 */
record ArchivePage(List<Member> members, List<StateCount> counts, long unassigned, List<ArchiveFinding> findings) {

    /**
     * A manifest in an archive.
     *
     * @param documentId null if it is missing
     * @param wasHere whether it was sent before the archive was
     */
    record Member(
            @Nullable UUID documentId,
            String path,
            @Nullable Integer generation,
            ArchiveMember.State state,
            boolean wasHere,
            Document.@Nullable State reading,
            long entries,
            long unassigned) {}

    record StateCount(ArchiveMember.State state, long members, long unassigned) {}

    long count() {
        return counts.stream().mapToLong(StateCount::members).sum();
    }

    long count(ArchiveMember.State state) {
        return counts.stream()
                .filter(one -> one.state() == state)
                .mapToLong(StateCount::members)
                .sum();
    }

    public long notShown() {
        return count() - members.size();
    }

    public boolean isBeingRead() {
        return members.stream()
                .anyMatch(one -> one.reading() == Document.State.WAITING || one.reading() == Document.State.READING);
    }
}
