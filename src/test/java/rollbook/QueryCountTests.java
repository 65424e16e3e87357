package rollbook;

import static org.assertj.core.api.Assertions.assertThat;

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
import org.springframework.security.core.userdetails.UserDetails;
import org.springframework.security.core.userdetails.UserDetailsService;
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
    /** Twelve in all: a session takes three more than are seen here, to read it, note the access, and check it again. */
    private static final int MOST_STATEMENTS = 9;
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
    UserDetailsService people;

    @Autowired
    Jobs jobs;

    @BeforeEach
    void haveTheForecast() {
        jobs.run();
    }

    @ParameterizedTest
    @ValueSource(strings = {"wrangler", "office", "post", "reader", "administrator"})
    void everyPageThatIsLinkedOpensWithFewStatements(String signInName) throws Exception {
        Walk walk = new Walk(people.loadUserByUsername(signInName));
        walk.from("/");
        assertThat(walk.problems)
                .as("as %s, of %d pages", signInName, walk.counts.size())
                .isEmpty();
        assertThat(walk.patterns())
                .as("the walk gets about")
                .hasSizeGreaterThan(10)
                .anyMatch(pattern -> pattern.matches("/p/\\w+/rolls/\\{id}"))
                .anyMatch(pattern -> pattern.matches("/p/\\w+/storage"));
    }

    /** One person's walk, breadth first. */
    private final class Walk {
        private final UserDetails person;
        private final Deque<String> ahead = new ArrayDeque<>();
        private final Set<String> seen = new HashSet<>();
        private final Map<String, Integer> looked = new HashMap<>();
        private final Map<String, Integer> counts = new TreeMap<>();
        private final List<String> problems = new ArrayList<>();

        Walk(UserDetails person) {
            this.person = person;
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

        private void visit(String address) throws Exception {
            MvcTestResult[] result = new MvcTestResult[1];
            int count = statements.during(() -> result[0] = mvc.get()
                    .uri(URI.create(address))
                    .with(SecurityMockMvcRequestPostProcessors.user(person))
                    .exchange());
            counts.put(address, count);
            if (result[0].getUnresolvedException() != null) {
                problems.add(address + " breaks: "
                        + NestedExceptionUtils.getMostSpecificCause(result[0].getUnresolvedException()));
                return;
            }
            int status = result[0].getResponse().getStatus();
            if (count > MOST_STATEMENTS) {
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
