package rollbook.inventory;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Something that is wrong with what was written about an item. The message {@code key} says what, {@code key.next} what
 * to do about it.
 *
 * @param column where, or null for the whole line
 */
record Problem(@Nullable Column column, String key, List<Object> args) {
    static Problem in(@Nullable Column column, String key, Object... args) {
        return new Problem(column, key, List.of(args));
    }
}
