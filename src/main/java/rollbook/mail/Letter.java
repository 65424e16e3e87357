package rollbook.mail;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a message says, in words.
 *
 * @param sentence answers first
 */
record Letter(String subject, String sentence, List<Part> parts) {

    record Part(String title, List<Line> lines) {}

    /** @param path of the page that shows the thing, from the portal's root; null for none */
    record Line(String text, @Nullable String path) {}
}
