package rollbook.scenario;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rollbook.web.Choice;

/**
 * The form of a scenario as it is printed.
 *
 * @param problems what has to be put right, in the form's order
 */
record SheetPage(List<Part> parts, List<Problem> problems) {

    /** Fields that belong together. */
    record Part(String title, String hint, List<Field> fields) {}

    /**
     * @param hint where its value comes from
     * @param choices null for what is typed
     * @param error what is wrong with it, or null
     */
    record Field(
            String name,
            String id,
            String label,
            String hint,
            String value,
            String inputMode,
            @Nullable List<Choice> choices,
            @Nullable String error) {}

    /** A line of the summary, and the field that it is about. */
    record Problem(String fieldId, String text) {}
}
