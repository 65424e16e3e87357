package rollbook.inventory;

import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import rollbook.web.Display;

/** What stands first on the pages of the inventory: what the items are doing, in plain language. */
@Component
class MediaSentences {
    private static final int NAMED = 3;

    private final Display display;

    MediaSentences(Display display) {
        this.display = display;
    }

    String of(MediaFigures figures) {
        List<String> sentences = new ArrayList<>();
        sentences.add(
                figures.cards() == 0
                        ? display.text("inventory.sentence.no-cards", figures.present())
                        : display.text(
                                "inventory.sentence.cards",
                                figures.blank(),
                                figures.held(),
                                figures.clearToErase(),
                                figures.working()));
        add(sentences, "inventory.sentence.quarantined", figures.quarantined());
        add(sentences, "inventory.sentence.lost", figures.lost());
        add(sentences, "inventory.sentence.overdue", figures.overdue());
        if (figures.dueSoonUntil() != null) {
            add(sentences, "inventory.sentence.due-soon", figures.dueSoon(), display.date(figures.dueSoonUntil()));
        }
        return String.join(" ", sentences);
    }

    /** State and place: what somebody who has just scanned the label wants to know. */
    String of(MediaItem item) {
        String state = display.text("inventory.item.sentence." + ItemState.of(item), item.code());
        String place = item.condition() == Condition.LOST
                ? "inventory.item.last-known"
                : item.condition() == Condition.RETURNED
                        ? "inventory.item.was-at"
                        : item.usable() && item.offSite() ? "inventory.item.away-at" : "inventory.item.at";
        String where = display.text(place, item.placeName());
        String holder = item.holder().isEmpty() ? "" : " " + display.text("inventory.item.with", item.holder());
        return state + " " + where + holder;
    }

    private void add(List<String> sentences, String key, String codes, Object... args) {
        List<String> list = MediaFigures.list(codes);
        if (!list.isEmpty()) {
            Object date = args.length == 0 ? "" : args[0];
            sentences.add(display.text(key, list.size(), named(list), date));
        }
    }

    private String named(List<String> codes) {
        String first = String.join(", ", codes.subList(0, Math.min(NAMED, codes.size())));
        return codes.size() <= NAMED ? first : display.text("inventory.sentence.and-more", first, codes.size() - NAMED);
    }
}
