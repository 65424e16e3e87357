package rollbook;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.http.Cookie;
import java.net.URI;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.NestedExceptionUtils;
import org.springframework.http.HttpHeaders;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.testing.DemoTest;
import rollbook.testing.Jobs;
import rollbook.testing.StatementCount;

/**
 * Walks the demo as each of its people, from link to link. Whatever a page offers opens, and no page asks the database
 * more often than it may, however many rows it shows: the demo has about 120 rolls, 45 items and 800 acts on record.
 */
@DemoTest
class QueryCountTests {
    /** With reading the session, noting the access and whatever else a signed-in person's request takes. */
    private static final int MOST_STATEMENTS = 12;
    /** Of reports of a day and of the show, with their files: they gather what the other pages show one by one. */
    private static final int MOST_STATEMENTS_OF_REPORTS = 13;

    private static final Pattern REPORT = Pattern.compile("/p/\\w+/(handover|days/[^/]+/report)(\\.\\w+)?(\\?.*)?");
    /** Of pages that differ in their ids and queries only. */
    private static final int LOOKED_AT_EACH = 8;

    private static final int MOST_PAGES = 500;
    private static final Pattern UUID = Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");
    private static final Pattern QUERY = Pattern.compile("\\?.*");

    @Autowired
    MockMvcTester mvc;

    @Autowired
    StatementCount statements;

    @Autowired
    Jobs jobs;

    @BeforeEach
    void haveTheForecast() {
        jobs.run();
    }

    @ParameterizedTest
    @ValueSource(strings = {"wrangler", "office", "post", "reader", "administrator"})
    void everyPageThatIsLinkedOpensWithFewStatements(String signInName) throws Exception {
        Walk walk = new Walk(signIn(signInName));
        walk.from("/");
        assertThat(walk.problems)
                .as("as %s, of %d pages", signInName, walk.counts.size())
                .isEmpty();
        assertThat(walk.unequalLists())
                .as("lists that take more statements with some rows than with others")
                .isEmpty();
        assertThat(walk.patterns())
                .as("the walk gets about")
                .hasSizeGreaterThan(10)
                .anyMatch(pattern -> pattern.matches("/p/\\w+/rolls/\\{id}"))
                .anyMatch(pattern -> pattern.matches("/p/\\w+/storage"));
    }

    /** As a browser does it, so that each request carries a session that is kept in the database. */
    private Cookie signIn(String signInName) {
        // The container gives the cookie its own name only in a running server.
        Cookie session = mvc.post()
                .uri("/sign-in")
                .with(SecurityMockMvcRequestPostProcessors.csrf())
                .param("username", signInName)
                .param("password", "rollbook-demo")
                .exchange()
                .getResponse()
                .getCookie("SESSION");
        assertThat(session).as("the session of %s", signInName).isNotNull();
        // The test's CSRF token is kept in the session, which costs one statement more on the first page that is
        // opened;
        // a browser keeps it in a cookie.
        mvc.get().uri("/account").cookie(session).exchange();
        return session;
    }

    /** One person's walk, breadth first. */
    private final class Walk {
        private final Cookie session;
        private final Deque<String> ahead = new ArrayDeque<>();
        private final Set<String> seen = new HashSet<>();
        private final Map<String, Integer> looked = new HashMap<>();
        private final Map<String, Integer> counts = new TreeMap<>();
        private final List<String> problems = new ArrayList<>();

        Walk(Cookie session) {
            this.session = session;
        }

        void from(String start) throws Exception {
            note(start);
            while (!ahead.isEmpty() && counts.size() < MOST_PAGES) {
                visit(ahead.removeFirst());
            }
        }

        Set<String> patterns() {
            return counts.keySet().stream().map(QueryCountTests::pattern).collect(Collectors.toSet());
        }

        /** Pages of a list, or one list of several days, hold from none to fifty rows; a form that is filled isn't one. */
        Map<String, Set<Integer>> unequalLists() {
            Map<String, Set<Integer>> lists = counts.entrySet().stream()
                    .filter(page -> page.getKey().contains("?")
                            && !pattern(page.getKey()).endsWith("/new"))
                    .collect(Collectors.groupingBy(
                            page -> pattern(page.getKey()),
                            TreeMap::new,
                            Collectors.mapping(Map.Entry::getValue, Collectors.toSet())));
            assertThat(lists).as("lists that the walk finds").hasSizeGreaterThan(2);
            lists.values().removeIf(takes -> takes.size() == 1);
            return lists;
        }

        private void visit(String address) throws Exception {
            MvcTestResult[] result = new MvcTestResult[1];
            int count = statements.during(() -> result[0] =
                    mvc.get().uri(URI.create(address)).cookie(session).exchange());
            counts.put(address, count);
            if (result[0].getUnresolvedException() != null) {
                problems.add(address + " breaks: "
                        + NestedExceptionUtils.getMostSpecificCause(result[0].getUnresolvedException()));
                return;
            }
            int status = result[0].getResponse().getStatus();
            if (count > (REPORT.matcher(address).matches() ? MOST_STATEMENTS_OF_REPORTS : MOST_STATEMENTS)) {
                problems.add(address + " takes " + count + " statements");
            }
            if (status >= 300 && status < 400) {
                note(result[0].getResponse().getHeader(HttpHeaders.LOCATION));
            } else if (status != 200) {
                problems.add(address + " answers " + status);
            } else if (String.valueOf(result[0].getResponse().getContentType()).startsWith("text/html")) {
                read(address, result[0].getResponse().getContentAsString());
            }
        }

        private void read(String address, String page) {
            // So Thymeleaf shows a text that is missing.
            if (page.contains("??")) {
                problems.add(address + " lacks the text " + page.replaceAll("(?s).*?\\?\\?(.*?)\\?\\?.*", "$1"));
            }
            Jsoup.parse(page).select("a[href]").forEach(link -> note(link.attr("href")));
        }

        private void note(String href) {
            String address = href.replaceAll("#.*", "");
            if (!address.startsWith("/") || !seen.add(address)) {
                return;
            }
            if (looked.merge(pattern(address), 1, Integer::sum) <= LOOKED_AT_EACH) {
                ahead.addLast(address);
            }
        }
    }

    private static String pattern(String address) {
        return UUID.matcher(QUERY.matcher(address).replaceAll("")).replaceAll("{id}");
    }
}
