package rollbook.audit;

import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Something a person did.
 *
 * @param productionId the production it was done in, or null for what concerns the whole installation
 * @param action a word for what was done; {@code audit.action.<action>} in the messages says it in plain language
 * @param subjectKind what kind of thing it was done to: roll, card, document, day…
 * @param subjectCode the code by which people know that thing
 * @param detail what else a reader of the record must know, in data rather than prose; may be empty
 */
public record Act(
        @Nullable UUID productionId,
        @Nullable UUID personId,
        String personName,
        String action,
        String subjectKind,
        String subjectCode,
        String detail) {}
