package rollbook.production;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.audit.Act;

/**
 * Who signs for something in a production: a member, or somebody without an account who was given a link for it.
 *
 * @param personId null for somebody without an account
 * @param name the person's, or what somebody without an account gave as theirs
 */
public record Signatory(UUID productionId, @Nullable UUID personId, String name) {

    /** Something they did in the production, ready for the record. */
    public Act act(String action, String subjectKind, String subjectCode, String detail) {
        return new Act(productionId, personId, name, action, subjectKind, subjectCode, detail);
    }
}
