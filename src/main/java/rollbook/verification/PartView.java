package rollbook.verification;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A part on its document's page.
 *
 * @param assignments all of them, oldest first
 * @param roll the roll that it probably is of, as a code, or null
 * @param describes what it probably describes
 * @param medium the code of the medium that it probably describes, or empty
 */
record PartView(
        Part part, List<Assignment> assignments, @Nullable String roll, Described describes, String medium) {

    public String folder() {
        return DocumentName.exact(part.folder());
    }

    /** What it describes now. */
    public List<Assignment> current() {
        return assignments.stream().filter(assignment -> !assignment.replaced()).toList();
    }

    @Nullable
    public Long newestSeen() {
        return assignments.isEmpty()
                ? null
                : assignments.get(assignments.size() - 1).id();
    }

    public boolean isAssigned() {
        return !assignments.isEmpty();
    }

    /** Whether it speaks of several things now; then it proves neither. */
    public boolean saysTwice() {
        return current().size() > 1;
    }

    /** The form that says what the part describes, besides what it describes already. */
    public PartForm adding() {
        String subject = isAssigned()
                ? Subject.COPY.name()
                : describes.subject() == null ? "" : describes.subject().name();
        String rollCode = isAssigned() ? firstRoll() : roll == null ? "" : roll;
        return new PartForm(part.id(), subject, rollCode, isAssigned() ? "" : medium, "", null, newestSeen(), Map.of());
    }

    private String firstRoll() {
        return current().stream()
                .map(Assignment::rollCode)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse("");
    }

    public PartForm correcting(Assignment assignment) {
        return new PartForm(
                part.id(),
                assignment.subject().name(),
                assignment.rollCode() == null ? "" : assignment.rollCode(),
                assignment.itemCode() == null ? "" : assignment.itemCode(),
                "",
                assignment.id(),
                newestSeen(),
                Map.of());
    }

    public UUID id() {
        return part.id();
    }
}
