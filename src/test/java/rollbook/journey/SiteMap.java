package rollbook.journey;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/**
 * Walks from link to link and picks the pages that are worth a look: of those that differ in their ids only, each that
 * holds an element in a place where none before it held one. So the page of a roll that is held is looked at besides
 * that of one that is cleared, but not each of a hundred.
 */
final class SiteMap {
    /** Of pages that differ in their ids only, so many are read. */
    private static final int READ_EACH = 3;

    private static final Pattern UUID = Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");
    private static final Pattern PRODUCTION = Pattern.compile("^/p/\\w+");

    /** A form with something to fill in. */
    static final String FORM =
            "main form[method=post]:has(input:not([type=hidden]):not([type=file]), textarea, select)";

    private final Map<String, String> pagesWithForms = new TreeMap<>();
    private final Set<String> patterns = new TreeSet<>();
    private final Set<String> shapes = new HashSet<>();

    /**
     * Addresses of the pages that show something which no walk before this one has seen, as they were found.
     *
     * @param within how addresses begin that belong to this walk
     */
    List<String> walk(HttpVisitor visitor, String start, String within) {
        Deque<String> ahead = new ArrayDeque<>(List.of(start));
        Set<String> seen = new HashSet<>(ahead);
        Map<String, Integer> read = new HashMap<>();
        List<String> worth = new ArrayList<>();
        while (!ahead.isEmpty()) {
            String address = ahead.removeFirst();
            visitor.page(address).ifPresent(page -> {
                if (showsSomethingNew(address, page)) {
                    worth.add(address);
                }
                for (Element link : page.select("a[href]")) {
                    String href = link.attr("href").replaceAll("#.*", "");
                    if (href.startsWith(within)
                            && seen.add(href)
                            && read.merge(pattern(href), 1, Integer::sum) <= READ_EACH) {
                        ahead.addLast(href);
                    }
                }
            });
        }
        return worth;
    }

    /** Addresses without their ids, of all walks. */
    Set<String> patterns() {
        return patterns;
    }

    /** One page of each kind that has something to fill in, of all walks. */
    Collection<String> pagesWithForms() {
        return pagesWithForms.values();
    }

    private boolean showsSomethingNew(String address, Document page) {
        String pattern = pattern(address);
        patterns.add(pattern);
        if (page.selectFirst(FORM) != null) {
            pagesWithForms.putIfAbsent(pattern, address);
        }
        // All of them are to be added, so no stream that stops at the first.
        Set<String> these = page.body().select("*").stream()
                .filter(element -> element.parent() != null)
                .map(element -> pattern + " " + kind(element.parent()) + " > " + kind(element))
                .collect(Collectors.toSet());
        return shapes.addAll(these);
    }

    private static String kind(Element element) {
        return element.tagName() + new TreeSet<>(element.classNames());
    }

    static String pattern(String address) {
        String path = address.replaceAll("\\?.*", "");
        return UUID.matcher(PRODUCTION.matcher(path).replaceAll("/p/{production}"))
                .replaceAll("{id}");
    }
}
