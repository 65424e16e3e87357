package rollbook.production;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.testing.TestProduction;

/** Opens and sends the pages of a production as a browser does. */
record SettingsPages(MockMvcTester mvc, TestProduction production) {
    void assertStale(MvcTestResult result) throws Exception {
        assertRefused(result, "Somebody else changed or removed this");
    }

    void assertRefused(MvcTestResult result, String reason) throws Exception {
        assertThat(result).hasStatus(409);
        Document page = page(result);
        assertThat(page.select(".sentence").text()).contains(reason);
        assertThat(page.select("main a[href=" + production.path("settings") + "]"))
                .as("the way back")
                .hasSize(1);
        assertThat(page.select("header .production").text()).as("where this is").isNotEmpty();
    }

    MvcTestResult get(Role role, String path) {
        var result = mvc.get()
                .uri(production.path(path))
                .with(production.signedInAs(role))
                .exchange();
        assertThat(result).hasStatusOk();
        return result;
    }

    MvcTestResult post(Role role, String path, Map<String, String> form) {
        var request = mvc.post()
                .uri(production.path(path))
                .header("Referer", "http://localhost" + production.path("settings"))
                .with(production.signedInAs(role));
        // As a browser does for the check boxes that are not ticked.
        request.param("_offSite", "on").param("_neededToClear", "on");
        form.forEach((name, value) -> request.param(name, value));
        return request.exchange();
    }

    static Map<String, String> with(Map<String, String> form, String name, String value) {
        var changed = new HashMap<>(form);
        changed.put(name, value);
        return changed;
    }

    static String error(MvcTestResult result, String field) throws Exception {
        return page(result).select("#" + field + "-error").text();
    }

    static Document page(MvcTestResult result) throws Exception {
        return Jsoup.parse(result.getMvcResult().getResponse().getContentAsString());
    }
}
