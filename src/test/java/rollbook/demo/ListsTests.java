package rollbook.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.testing.DemoTest;

/** Every list keeps what is asked of it in its address, in one way. */
@DemoTest
class ListsTests {
    private static final String SHOW = "/p/TIDECLERK/";

    @Autowired
    MockMvcTester mvc;

    @Autowired
    UserDetailsService accounts;

    static List<String> lists() {
        return List.of(
                "media",
                "documents",
                "record",
                "outbox",
                "orders",
                "shipments",
                "suppliers",
                "hire",
                "rolls",
                "days",
                "offloads");
    }

    @ParameterizedTest
    @MethodSource("lists")
    void whatItDoesNotKnowIsLeftOutAndSaid(String list) throws Exception {
        String nonsense = "sort=code%3B%20drop%20table%20people_person&state=SPOON&standing=SPOON&outcome=SPOON"
                + "&about=SPOON&from=yesterday&colour=red&page=-7&kind=SPOON";
        Document page = page(list + "?" + nonsense);
        assertThat(page.select(".count strong").text())
                .startsWith("The address asks for something that this list doesn’t know")
                .contains("drop table", "colour");
        assertThat(page.select("tbody tr").size())
                .isEqualTo(page(list).select("tbody tr").size());
    }

    @ParameterizedTest
    @MethodSource("lists")
    void eachHeadingThatSortsDoesSoBothWaysAndKeepsTheFilter(String list) throws Exception {
        Document page = page(list + (list.equals("record") ? "?text=a" : "?q=a"));
        List<String> sorts = sorted(page).select("th a.sort").eachAttr("href");
        assertThat(sorts).hasSizeGreaterThanOrEqualTo(3);
        for (String sort : sorts) {
            assertThat(sort).as("the filter").containsAnyOf("q=a", "text=a");
            Document sorted = page(sort);
            Element table = sorted(sorted);
            assertThat(table.select("th[aria-sort]")).as(sort).hasSize(1);
            String back = table.select("th[aria-sort] a").attr("href");
            Document other = page(back);
            assertThat(sorted(other).select("th[aria-sort]").attr("aria-sort"))
                    .as(back)
                    .isNotEqualTo(table.select("th[aria-sort]").attr("aria-sort"));
            assertThat(sorted.select(".count").text())
                    .as(sort)
                    .isEqualTo(page.select(".count").text())
                    .isEqualTo(other.select(".count").text());
        }
    }

    @ParameterizedTest
    @MethodSource("lists")
    void whatMatchesNothingSaysWhichFilterToDropAndDroppingItShowsAllAgain(String list) throws Exception {
        String name = list.equals("record") ? "text" : "q";
        Document page = page(list + "?" + name + "=nothing%20is%20called%20so");
        Element drop = page.select(".empty li a").first();
        assertThat(drop).as(page.select("main").text()).isNotNull();
        assertThat(drop.text()).endsWith(": nothing is called so”");
        assertThat(page(drop.attr("href")).select(".count").text()).contains("in all.");
    }

    private static Element sorted(Document page) {
        return page.select("table:has(th a.sort)").first();
    }

    private Document page(String address) throws Exception {
        String path = address.startsWith("/") ? address : SHOW + address;
        MvcTestResult result = mvc.get()
                .uri(URI.create(path))
                .with(SecurityMockMvcRequestPostProcessors.user(accounts.loadUserByUsername("administrator")))
                .exchange();
        assertThat(result).as(path).hasStatusOk();
        return Jsoup.parse(result.getResponse().getContentAsString());
    }
}
