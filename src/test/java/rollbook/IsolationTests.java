package rollbook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.HttpMethod;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

/** Nothing crosses productions, and nobody does what their role doesn't allow: asked of every page there is. */
@PortalTest
class IsolationTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mappings;

    private record Page(HttpMethod method, String pattern) {
        String in(TestProduction production) {
            return pattern.replace("{production}", production.code)
                    .replaceAll("\\{[a-zA-Z]*[vV]erdict[a-zA-Z]*}", "1")
                    .replaceAll("\\{[a-zA-Z]+:([a-z]+)\\|[^/]*}", "$1")
                    .replaceAll("\\{[a-zA-Z]+(:[^/]*)?}", UUID.randomUUID().toString());
        }
    }

    /** Changes nothing but what is the person's own. */
    private static final Set<String> OWN =
            Set.of("/p/{production}/calendar/address", "/p/{production}/calendar/revocation", "/p/{production}/mail");

    /** What is read without signing in. */
    private static final Set<String> OPEN =
            Set.of("/sign-in", "/set-up", "/calendar/{secret}.ics", "/receipt/{secret}", "/mail/unsubscribe/{secret}");

    @Test
    void anAdministratorOfAnotherProductionGets404EverywhereInThisOne() {
        TestProduction mine = fixtures.production();
        TestProduction other = fixtures.production();
        for (Page page : pages()) {
            MvcTestResult result = mvc.method(page.method())
                    .uri(page.in(mine))
                    .with(other.signedInAs(Role.ADMINISTRATOR))
                    .exchange();
            assertThat(result).as("%s", page).hasStatus(404);
        }
    }

    @Test
    void aReaderChangesNothingAnywhere() {
        TestProduction production = fixtures.production();
        List<Page> changing = pages().stream()
                .filter(page -> page.method() != HttpMethod.GET && !OWN.contains(page.pattern()))
                .toList();
        assertThat(changing).hasSizeGreaterThan(30);
        for (Page page : changing) {
            MvcTestResult result = mvc.method(page.method())
                    .uri(page.in(production))
                    .with(production.signedInAs(Role.READER))
                    .exchange();
            assertThat(result).as("%s", page).hasStatus(403);
        }
    }

    @Test
    void whoIsNotSignedInIsSentToSignIn() {
        TestProduction production = fixtures.production();
        for (Page page : pages()) {
            if (page.method() == HttpMethod.GET) {
                assertThat(mvc.get().uri(page.in(production)))
                        .as("%s", page)
                        .hasStatus3xxRedirection()
                        .redirectedUrl()
                        .endsWith("/sign-in");
            }
        }
    }

    @Test
    void outsideProductionsToo() {
        List<String> elsewhere = mappings.getHandlerMethods().keySet().stream()
                .flatMap(mapping -> mapping.getPatternValues().stream())
                .filter(pattern -> !pattern.startsWith("/p/{production}") && !pattern.startsWith("/error"))
                .filter(pattern -> !OPEN.contains(pattern))
                .distinct()
                .toList();
        assertThat(elsewhere).contains("/account", "/productions");
        for (String pattern : elsewhere) {
            assertThat(mvc.get().uri(pattern.replaceAll("\\{[^}]*}", "x")))
                    .as(pattern)
                    .hasStatus3xxRedirection()
                    .redirectedUrl()
                    .endsWith("/sign-in");
        }
        assertThat(mvc.get().uri("/calendar/x.html")).hasStatus3xxRedirection();
        assertThat(mvc.get().uri("/calendar/x/y.ics")).hasStatus3xxRedirection();
    }

    @Test
    void anUnknownThingIsNotFound() {
        TestProduction production = fixtures.production();
        for (Page page : pages()) {
            if (page.method() == HttpMethod.GET
                    && page.pattern().indexOf('{', page.pattern().indexOf('}')) > 0) {
                assertThat(status(production, page.in(production)))
                        .as("%s", page)
                        .isEqualTo(404);
            }
        }
    }

    /** The status of the page, or of the one that it leads on to. */
    private int status(TestProduction production, String path) {
        MvcTestResult result = mvc.get()
                .uri(path)
                .with(production.signedInAs(Role.ADMINISTRATOR))
                .exchange();
        String next = result.getResponse().getRedirectedUrl();
        return next == null ? result.getResponse().getStatus() : status(production, next);
    }

    private List<Page> pages() {
        List<Page> pages = new ArrayList<>();
        mappings.getHandlerMethods()
                .keySet()
                .forEach(mapping -> mapping.getPatternValues().stream()
                        .filter(pattern -> pattern.startsWith("/p/{production}"))
                        .forEach(
                                pattern -> methods(mapping.getMethodsCondition().getMethods())
                                        .forEach(method -> pages.add(new Page(method, pattern)))));
        assertThat(pages).hasSizeGreaterThan(60);
        return pages;
    }

    private static List<HttpMethod> methods(Set<RequestMethod> methods) {
        return methods.isEmpty()
                ? List.of(HttpMethod.GET)
                : methods.stream().map(RequestMethod::asHttpMethod).toList();
    }
}
