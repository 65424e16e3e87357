package rollbook.web;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.springframework.validation.BindingResult;

/** What people type into forms: spaces around it and, in codes, lower case don't count. */
public final class Typed {
    private Typed() {}

    public static String text(@Nullable String typed) {
        return typed == null ? "" : typed.strip();
    }

    public static String code(@Nullable String typed) {
        return text(typed).toUpperCase(Locale.ROOT);
    }

    /**
     * Whether the form could be read at all. One that could not, for it has letters where a number belongs, takes no
     * further errors: they are found on the next try.
     */
    public static boolean isReadable(BindingResult result) {
        return result.getTarget() != null;
    }

    /**
     * Saves, and shows one refusal beside the field that it is about; any other goes its way.
     *
     * @return whether the form is right
     */
    public static boolean save(BindingResult result, String field, String refusalKey, Runnable save) {
        if (result.hasErrors()) {
            return false;
        }
        try {
            save.run();
            return true;
        } catch (Refusal refusal) {
            if (!refusal.key().equals(refusalKey)) {
                throw refusal;
            }
            result.rejectValue(field, refusal.key(), refusal.args().toArray(), null);
            return false;
        }
    }
}
