package rollbook.web;

import java.io.Serializable;
import java.util.List;

/**
 * What was just done, told once on the next page: put it into the flash attribute {@code notice} before a redirect.
 * The arguments travel in the session, so they must be serializable: texts and numbers.
 */
public record Notice(String key, List<Object> args) implements Serializable {
    public static Notice of(String key, Object... args) {
        return new Notice(key, List.of(args));
    }
}
