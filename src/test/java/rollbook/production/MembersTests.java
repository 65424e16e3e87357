package rollbook.production;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

/** People of a production and their roles. */
@PortalTest
class MembersTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Memberships memberships;

    private TestProduction production;
    private UUID administrator;
    private UUID reader;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        administrator = production.as(Role.ADMINISTRATOR).personId();
        reader = production.as(Role.READER).personId();
    }

    @Test
    void aNewPersonGetsAnAccountWhosePasswordIsShownOnceAndWorks() throws Exception {
        String name = "new." + production.code;
        var shown = add("NEW", name, "Sol Marr", "WRANGLER", "OFFICE");
        assertThat(shown).hasStatusOk();
        assertThat(shown.getMvcResult().getResponse().getHeader("Cache-Control"))
                .contains("no-store");
        String password = page(shown).select("#first-password").text();
        assertThat(password).matches("([A-Z2-9]{4}-){3}[A-Z2-9]{4}");
        assertThat(signIn(name, password)).hasRedirectedUrl("/");
        assertThat(memberships.members(production.id))
                .filteredOn(member -> member.signInName().equals(name))
                .singleElement()
                .returns("Sol Marr", Memberships.Member::displayName)
                .returns(Set.of(Role.WRANGLER, Role.OFFICE), Memberships.Member::roles);

        var again = add("NEW", name, "Sol Marr", "WRANGLER");
        assertThat(again).hasStatus(422);
        assertThat(error(again, "signInName")).contains("belongs to another account");
    }

    @Test
    void aPersonWithAnAccountIsAddedByTheSignInName() throws Exception {
        String name = signInName(fixtures.production(), Role.POST);
        assertThat(add("EXISTING", name.toUpperCase(Locale.ROOT), "", "POST"))
                .hasRedirectedUrl(production.path("settings"));
        assertThat(memberships.members(production.id))
                .extracting(Memberships.Member::signInName)
                .contains(name);
        assertThat(error(add("EXISTING", name, "", "POST"), "signInName")).contains("already");
        assertThat(error(add("EXISTING", "nobody." + production.code, "", "POST"), "signInName"))
                .contains("No account has this sign-in name");
    }

    @Test
    void aPersonWithoutNameOrRoleIsNotAdded() throws Exception {
        var wrong = add("NEW", "x", "");
        assertThat(wrong).hasStatus(422);
        assertThat(page(wrong).select(".error-summary a").eachAttr("href"))
                .containsExactlyInAnyOrder("#signInName", "#displayName", "#roles");
        assertThat(memberships.members(production.id)).hasSize(Role.values().length);
    }

    @Test
    void rolesAreChangedAndAStaleFormIsRefused() throws Exception {
        assertThat(change(reader, List.of("READER"), "WRANGLER", "POST")).hasRedirectedUrl(production.path("settings"));
        assertThat(roles(reader)).containsExactlyInAnyOrder(Role.WRANGLER, Role.POST);

        var stale = change(reader, List.of("READER"), "ADMINISTRATOR");
        assertThat(stale).hasStatus(409);
        assertThat(page(stale).select(".sentence").text()).contains("Somebody else changed");
        assertThat(roles(reader)).containsExactlyInAnyOrder(Role.WRANGLER, Role.POST);

        var none = change(reader, List.of("WRANGLER", "POST"));
        assertThat(none).hasStatus(422);
        assertThat(error(none, "roles")).contains("at least one role");
    }

    @Test
    void theLastAdministratorStaysUntilThereIsAnother() throws Exception {
        var off = post("settings/people/" + administrator + "/remove");
        assertThat(off).hasStatus(409);
        assertThat(page(off).select(".sentence").text()).contains("without an administrator");
        assertThat(change(administrator, List.of("ADMINISTRATOR"), "READER")).hasStatus(409);
        assertThat(roles(administrator)).containsExactly(Role.ADMINISTRATOR);

        change(reader, List.of("READER"), "ADMINISTRATOR");
        assertThat(post("settings/people/" + administrator + "/remove")).hasRedirectedUrl("/productions");
        assertThat(mvc.get().uri(production.path("settings")).with(production.signedInAs(Role.ADMINISTRATOR)))
                .hasStatus(404);
    }

    @Test
    void whoIsTakenOffFindsNothingAnyMore() {
        assertThat(mvc.get().uri(production.path("settings")).with(production.signedInAs(Role.READER)))
                .hasStatusOk();
        assertThat(post("settings/people/" + reader + "/remove")).hasRedirectedUrl(production.path("settings"));
        assertThat(mvc.get().uri(production.path("settings")).with(production.signedInAs(Role.READER)))
                .hasStatus(404);
    }

    @Test
    void anAdministratorRenewsAPasswordThatOpensNoOthersProduction() throws Exception {
        String name = signInName(production, Role.READER);
        var shown = post("settings/people/" + reader + "/password");
        assertThat(shown).hasStatusOk();
        assertThat(signIn(name, page(shown).select("#first-password").text())).hasRedirectedUrl("/");

        TestProduction elsewhere = fixtures.production();
        memberships.add(elsewhere.as(Role.ADMINISTRATOR), reader, name, Set.of(Role.READER));
        var refused = post("settings/people/" + reader + "/password");
        assertThat(refused).hasStatus(409);
        assertThat(page(refused).select(".sentence").text()).contains("a production that you don’t administer");
    }

    @Test
    void anAdministratorMakesAnotherProductionAndThenChoosesBetweenTheTwo() throws Exception {
        assertThat(mvc.get().uri("/").with(production.signedInAs(Role.ADMINISTRATOR)))
                .hasRedirectedUrl("/p/" + production.code + "/today");
        String code = ("N-" + production.code);
        assertThat(error(create(production.code), "code")).contains("Another production has the code");
        assertThat(create(code.toLowerCase(Locale.ROOT))).hasRedirectedUrl("/p/" + code + "/settings");

        var front = mvc.get()
                .uri("/")
                .with(production.signedInAs(Role.ADMINISTRATOR))
                .exchange();
        assertThat(front).hasStatusOk();
        assertThat(page(front).select("main table a").eachAttr("href"))
                .containsExactly("/p/" + code + "/today", "/p/" + production.code + "/today");
    }

    private MvcTestResult create(String code) {
        return mvc.post()
                .uri("/productions/new")
                .with(production.signedInAs(Role.ADMINISTRATOR))
                .param("code", code)
                .param("name", "Another")
                .param("zone", "UTC")
                .param("currency", "EUR")
                .exchange();
    }

    private MvcTestResult add(String account, String signInName, String displayName, String... roles) {
        return mvc.post()
                .uri(production.path("settings/people/new"))
                .with(production.signedInAs(Role.ADMINISTRATOR))
                .param("account", account)
                .param("signInName", signInName)
                .param("displayName", displayName)
                .param("_roles", "on")
                .param("roles", roles)
                .exchange();
    }

    private MvcTestResult change(UUID person, List<String> before, String... roles) {
        return mvc.post()
                .uri(production.path("settings/people/" + person))
                .with(production.signedInAs(Role.ADMINISTRATOR))
                .param("before", before.toArray(String[]::new))
                .param("_roles", "on")
                .param("roles", roles)
                .exchange();
    }

    private MvcTestResult post(String path) {
        return mvc.post()
                .uri(production.path(path))
                .with(production.signedInAs(Role.ADMINISTRATOR))
                .exchange();
    }

    private MvcTestResult signIn(String name, String password) {
        return mvc.post()
                .uri("/sign-in")
                .with(csrf())
                .param("username", name)
                .param("password", password)
                .exchange();
    }

    private Set<Role> roles(UUID person) {
        return memberships.member(production.id, person).roles();
    }

    private static String signInName(TestProduction production, Role role) {
        return (role + "." + production.code).toLowerCase(Locale.ROOT);
    }

    private static String error(MvcTestResult result, String field) throws Exception {
        return page(result).select("#" + field + "-error").text();
    }

    private static Document page(MvcTestResult result) throws Exception {
        return Jsoup.parse(result.getMvcResult().getResponse().getContentAsString());
    }
}
