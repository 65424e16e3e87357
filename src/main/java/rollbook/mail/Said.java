package rollbook.mail;

import java.util.List;

/**
 * Something to say: a message and what stands in it.
 *
 * @param args texts, whole numbers, dates, instants, other things said, and lists of these
 */
record Said(String key, List<Object> args) {
    static Said of(String key, Object... args) {
        return new Said(key, List.of(args));
    }

    /** What is in words already. */
    static Said text(String text) {
        return of("mail.said", text);
    }
}
