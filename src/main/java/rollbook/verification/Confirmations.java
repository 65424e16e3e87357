package rollbook.verification;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** Takes what people say of parts: in a form, or of several at once. */
@Service
class Confirmations {
    private final Assignments assignments;
    private final MediaItems items;

    Confirmations(Assignments assignments, MediaItems items) {
        this.assignments = assignments;
        this.items = items;
    }

    /**
     * Says of several parts that nobody has assigned yet what they describe, each of its own roll: all or none.
     *
     * @throws Refusal if somebody else has assigned one of them meanwhile
     */
    @Transactional
    public void confirm(Membership by, List<PartView> parts, Map<String, UUID> rollIds, Described described) {
        Subject subject = described.subject();
        if (subject == null) {
            throw new NotFoundException();
        }
        for (PartView part : parts) {
            UUID roll = part.roll() == null ? null : rollIds.get(part.roll().toUpperCase(Locale.ROOT));
            assignments.assign(
                    by, part.id(), new Assignments.Statement(subject, roll, described.itemId(), null, ""), null);
        }
    }

    /** Assigns a part as the form says; returns the form with what is wrong with it, if anything is. */
    @Transactional
    public PartForm assign(Membership by, PartForm form, Map<String, UUID> rollIds) {
        Map<String, String> problems = new LinkedHashMap<>();
        Subject subject = subject(form, problems);
        UUID roll = subject == Subject.NOT_A_ROLL ? null : roll(form, rollIds, problems);
        UUID item = subject == Subject.COPY ? item(by, form, problems) : null;
        if (form.replaces() != null && form.note().isBlank()) {
            problems.put("note", "verification.document.problem.note");
        }
        if (problems.isEmpty() && subject != null) {
            assignments.assign(
                    by,
                    form.partId(),
                    new Assignments.Statement(
                            subject, roll, item, form.replaces(), form.note().strip()),
                    form.newestSeen());
        }
        return form.with(problems);
    }

    private static @Nullable Subject subject(PartForm form, Map<String, String> problems) {
        for (Subject subject : Subject.values()) {
            if (subject.name().equals(form.subject())) {
                return subject;
            }
        }
        problems.put("subject", "verification.document.problem.subject");
        return null;
    }

    private static @Nullable UUID roll(PartForm form, Map<String, UUID> rollIds, Map<String, String> problems) {
        UUID roll = rollIds.get(form.roll().strip().toUpperCase(Locale.ROOT));
        if (roll == null) {
            problems.put(
                    "roll",
                    form.roll().isBlank()
                            ? "verification.document.problem.roll-missing"
                            : "verification.document.problem.roll-unknown");
        }
        return roll;
    }

    private @Nullable UUID item(Membership by, PartForm form, Map<String, String> problems) {
        if (form.medium().isBlank()) {
            problems.put("medium", "verification.document.problem.medium-missing");
            return null;
        }
        return items.findByCode(by.productionId(), form.medium())
                .filter(item -> item.kind().holdsCopies())
                .map(MediaItem::id)
                .orElseGet(() -> {
                    problems.put("medium", "verification.document.problem.medium-unknown");
                    return null;
                });
    }
}
