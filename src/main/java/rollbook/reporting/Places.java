package rollbook.reporting;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import rollbook.web.Display;

/** The pages that people call by a word. */
@Component
class Places {
    /** Of the menus. */
    private static final List<String> IN_MENUS = List.of(
            "today",
            "rolls",
            "media",
            "days",
            "storage",
            "orders",
            "record",
            "shipments",
            "hire",
            "costs",
            "documents",
            "post",
            "formats",
            "suppliers",
            "calendar",
            "mail",
            "settings");

    /** That stand on other pages only. */
    private static final List<String> ELSEWHERE = List.of("clips", "offloads", "turnaround", "re-checks", "handover");

    private final Display display;

    Places(Display display) {
        this.display = display;
    }

    /** @param page as a membership's path takes it */
    record Place(String name, String page) {}

    /** Those whose names, or whose addresses, begin with the text. */
    List<Place> beginningWith(String typed) {
        String text = plain(typed);
        return text.isEmpty()
                ? List.of()
                : all().filter(place -> plain(place.name()).startsWith(text)
                                || plain(place.page()).startsWith(text))
                        .toList();
    }

    static boolean isCalled(Place place, String typed) {
        return plain(place.name()).equals(plain(typed)) || plain(place.page()).equals(plain(typed));
    }

    private Stream<Place> all() {
        return Stream.concat(
                IN_MENUS.stream().map(page -> new Place(display.text("web.place." + page), page)),
                ELSEWHERE.stream().map(page -> new Place(display.text("reporting.place." + page), page)));
    }

    private static String plain(String text) {
        return text.toLowerCase(Locale.UK).replaceAll("[\\s-]+", "");
    }
}
