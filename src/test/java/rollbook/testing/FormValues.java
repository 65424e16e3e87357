package rollbook.testing;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.FormElement;

/** What a browser would send of a form as it stands on the page. */
public final class FormValues {
    private FormValues() {}

    /** The values of the first form that the selector finds, without the CSRF token; names are unique. */
    public static Map<String, String> of(Document page, String selector) {
        Element form = page.selectFirst(selector);
        if (!(form instanceof FormElement filled)) {
            throw new AssertionError("no form " + selector + " on " + page.title());
        }
        Map<String, String> values = new LinkedHashMap<>();
        filled.formData().forEach(value -> values.put(value.key(), value.value()));
        values.remove("_csrf");
        return values;
    }
}
