package rollbook;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.servlet.http.Cookie;
import java.io.ByteArrayInputStream;
import java.net.URI;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.server.PathContainer;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import org.springframework.web.util.pattern.PathPattern;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;
import rollbook.testing.DemoTest;

/**
 * Every kind of paper that the portal prints can be read aloud: what a machine can tell of PDF/UA-1 (ISO 14289-1), veraPDF
 * tells of the demo's papers.
 */
@DemoTest
class PapersTests {
    /** Of pages that differ in their ids and queries only; of papers, which take longer, one. */
    private static final int LOOKED_AT_EACH = 2;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mappings;

    private final Deque<String> ahead = new ArrayDeque<>();
    private final Set<String> seen = new HashSet<>();
    private final Map<String, Integer> looked = new HashMap<>();
    private final Map<String, byte[]> papers = new HashMap<>();

    @Test
    void everyKindOfPaperIsAccessible() throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        gather();
        assertThat(kinds())
                .as("kinds of paper")
                .hasSizeGreaterThan(5)
                .allSatisfy(kind -> assertThat(papers.keySet())
                        .as("one of %s", kind)
                        .anyMatch(address -> kind.matches(path(address))));
        List<String> broken = new ArrayList<>();
        for (Map.Entry<String, byte[]> paper : papers.entrySet()) {
            findings(paper.getValue()).forEach(finding -> broken.add(paper.getKey() + ": " + finding));
        }
        assertThat(broken).as("of %d papers", papers.size()).isEmpty();
    }

    /** The demo's papers, from link to link. */
    private void gather() throws Exception {
        Cookie session = mvc.post()
                .uri("/sign-in")
                .with(SecurityMockMvcRequestPostProcessors.csrf())
                .param("username", "administrator")
                .param("password", "rollbook-demo")
                .exchange()
                .getResponse()
                .getCookie("SESSION");
        note("/p/TIDECLERK/today");
        while (!ahead.isEmpty()) {
            String address = ahead.removeFirst();
            MockHttpServletResponse answer = mvc.get()
                    .uri(URI.create(address))
                    .cookie(session)
                    .exchange()
                    .getResponse();
            if (String.valueOf(answer.getContentType()).startsWith("application/pdf")) {
                papers.put(address, answer.getContentAsByteArray());
            } else if (String.valueOf(answer.getContentType()).startsWith("text/html")) {
                Jsoup.parse(answer.getContentAsString())
                        .select("a[href^=/p/]")
                        .forEach(link -> note(link.attr("href").replaceAll("#.*", "")));
            }
        }
    }

    private void note(String address) {
        String kind = address.replaceAll("\\?.*", "").replaceAll("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}", "{id}");
        if (seen.add(address) && looked.merge(kind, 1, Integer::sum) <= (kind.endsWith(".pdf") ? 1 : LOOKED_AT_EACH)) {
            ahead.addLast(address);
        }
    }

    private List<PathPattern> kinds() {
        return mappings.getHandlerMethods().keySet().stream()
                .flatMap(mapping -> mapping.getPathPatternsCondition().getPatterns().stream())
                .filter(pattern -> pattern.getPatternString().endsWith(".pdf"))
                .toList();
    }

    private static PathContainer path(String address) {
        return PathContainer.parsePath(URI.create(address).getRawPath());
    }

    /** What breaks a rule: its clause in the standard, and where it is broken. */
    private static List<String> findings(byte[] pdf) throws Exception {
        try (PDFAParser parser =
                Foundries.defaultInstance().createParser(new ByteArrayInputStream(pdf), PDFAFlavour.PDFUA_1)) {
            ValidationResult result = Foundries.defaultInstance()
                    .createValidator(PDFAFlavour.PDFUA_1, false)
                    .validate(parser);
            Predicate<TestAssertion> failed = check -> check.getStatus() == TestAssertion.Status.FAILED;
            return result.getTestAssertions().stream()
                    .filter(failed)
                    .map(check -> "clause %s, %s at %s"
                            .formatted(
                                    check.getRuleId().getClause(),
                                    check.getMessage(),
                                    check.getLocation().getContext()))
                    .toList();
        }
    }
}
