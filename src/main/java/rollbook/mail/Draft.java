package rollbook.mail;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a letter is to say, before it is put into words.
 *
 * @param sentences the first line
 */
record Draft(Said subject, List<Said> sentences, List<Chapter> chapters) {
    /** So many things of a kind are named; of the others it is said how many they are. */
    static final int NAMED = 10;

    /** @param titleKey of the message above it */
    record Chapter(String titleKey, List<Entry> entries) {}

    /** @param page of the production that shows the thing; null for none */
    record Entry(Said said, @Nullable String page) {}

    /** Chapters in order, without those that have nothing to say. */
    static final class Chapters {
        private final List<Chapter> chapters = new ArrayList<>();

        /** @param page that shows all of them */
        Chapters add(String titleKey, List<Entry> entries, String page) {
            if (!entries.isEmpty()) {
                List<Entry> named = new ArrayList<>(entries.subList(0, Math.min(NAMED, entries.size())));
                if (entries.size() > NAMED) {
                    named.add(new Entry(Said.of("mail.more", entries.size() - NAMED), page));
                }
                chapters.add(new Chapter(titleKey, List.copyOf(named)));
            }
            return this;
        }

        List<Chapter> list() {
            return List.copyOf(chapters);
        }
    }
}
