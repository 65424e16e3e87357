package rollbook.inventory;

import java.util.List;

/** Why an item must stay: the message {@code key} with its arguments says what depends on it. */
public record Hold(String key, List<Object> args) {
    public static Hold of(String key, Object... args) {
        return new Hold(key, List.of(args));
    }
}
