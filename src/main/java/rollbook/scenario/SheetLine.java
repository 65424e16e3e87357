package rollbook.scenario;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One figure of the form, as it stands.
 *
 * @param name under which it is sent
 * @param id of its field on the page
 * @param thing the camera, kind of card, reader or leg that it is asked of; empty for what is asked once
 * @param value as typed if it is wrong, else in the form of its kind
 * @param begun what the form began with
 * @param choices for a choice
 * @param problem what is wrong with it, or null
 */
record SheetLine(
        String name,
        String id,
        Figure figure,
        String thing,
        String value,
        Begun begun,
        List<String> choices,
        @Nullable Problem problem) {

    /** @param key of its message */
    record Problem(String key, List<Object> args) {
        static Problem of(String key, Object... args) {
            return new Problem(key, List.of(args));
        }
    }

    boolean isWrong() {
        return problem != null;
    }

    boolean isChanged() {
        return !value.equals(begun.value());
    }

    SheetLine wrong(Problem with) {
        return new SheetLine(name, id, figure, thing, value, begun, choices, with);
    }
}
