package rollbook.manifest;

import org.jspecify.annotations.Nullable;

/** Somebody whom an ASC MHL hash list names as its author. */
public record MhlAuthor(
        String name,
        @Nullable String email,
        @Nullable String phone,
        @Nullable String role) {
    public MhlAuthor(String name) {
        this(name, null, null, null);
    }
}
