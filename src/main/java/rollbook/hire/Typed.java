package rollbook.hire;

import org.jspecify.annotations.Nullable;

/** What people type into forms: spaces around it don't count. */
final class Typed {
    private Typed() {}

    static String text(@Nullable String typed) {
        return typed == null ? "" : typed.strip();
    }
}
