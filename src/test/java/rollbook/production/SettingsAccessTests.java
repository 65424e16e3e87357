package rollbook.production;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.user;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.security.core.userdetails.UserDetailsService;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

/** Who may open and send what under settings; the mappings are asked for, so that a new page can't be forgotten. */
@PortalTest
class SettingsAccessTests {
    private static final String SETTINGS = "/p/{production}/settings";
    private static final Set<String> OFFICE_KEEPS = Set.of("places", "holidays", "working-days");

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    UserDetailsService people;

    @Autowired
    @Qualifier("requestMappingHandlerMapping")
    RequestMappingHandlerMapping mappings;

    private TestProduction production;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
    }

    @Test
    void theSearchFindsThePages() {
        assertThat(paths(RequestMethod.GET)).hasSize(14).contains(SETTINGS, SETTINGS + "/legs/{id}");
        assertThat(paths(RequestMethod.POST)).hasSize(21).contains(SETTINGS + "/legs/{id}/remove");
    }

    @Test
    void aStrangerFindsNothingEvenAsAnAdministratorElsewhere() {
        TestProduction elsewhere = fixtures.production();
        for (String path : paths(RequestMethod.GET)) {
            assertThat(mvc.get().uri(filled(path)).with(elsewhere.signedInAs(Role.ADMINISTRATOR)))
                    .as(path)
                    .hasStatus(404);
        }
        for (String path : paths(RequestMethod.POST)) {
            assertThat(mvc.post().uri(filled(path)).with(elsewhere.signedInAs(Role.ADMINISTRATOR)))
                    .as(path)
                    .hasStatus(404);
        }
    }

    @Test
    void anotherProductionsThingsAreNotFoundUnderOnesOwn() {
        TestProduction elsewhere = fixtures.production();
        UUID place = elsewhere.place("Vault", true);
        UUID leg = elsewhere.leg("Shuttle", place, true);
        UUID person = elsewhere.as(Role.READER).personId();
        for (String path : List.of("settings/places/" + place, "settings/legs/" + leg, "settings/people/" + person)) {
            assertThat(mvc.get().uri(production.path(path)).with(production.signedInAs(Role.ADMINISTRATOR)))
                    .as(path)
                    .hasStatus(404);
            assertThat(mvc.get().uri(elsewhere.path(path)).with(elsewhere.signedInAs(Role.ADMINISTRATOR)))
                    .as("the test could find " + path)
                    .hasStatusOk();
        }
    }

    @Test
    void everyRoleReadsTheOverviewAndOpensOnlyTheFormsThatItMaySend() {
        for (Role role : Role.values()) {
            assertThat(mvc.get().uri(production.path("settings")).with(production.signedInAs(role)))
                    .as(role.name())
                    .hasStatusOk();
            for (String path : paths(RequestMethod.GET)) {
                int status = mvc.get()
                        .uri(filled(path))
                        .with(production.signedInAs(role))
                        .exchange()
                        .getMvcResult()
                        .getResponse()
                        .getStatus();
                assertThat(status == 403)
                        .as("%s is kept from %s: %d", role, path, status)
                        .isEqualTo(!path.equals(SETTINGS) && !may(role, path));
            }
        }
    }

    @Test
    void aRoleSendsOnlyWhatItIsAllowed() {
        for (Role role : EnumSet.complementOf(EnumSet.of(Role.ADMINISTRATOR))) {
            for (String path : paths(RequestMethod.POST)) {
                int status = mvc.post()
                        .uri(filled(path))
                        .with(production.signedInAs(role))
                        .exchange()
                        .getMvcResult()
                        .getResponse()
                        .getStatus();
                assertThat(status == 403)
                        .as("%s is kept from sending %s: %d", role, path, status)
                        .isEqualTo(!may(role, path));
            }
        }
    }

    @Test
    void aFormWithoutItsTokenIsRefusedEvenFromAnAdministrator() {
        String name = "administrator." + production.code.toLowerCase(java.util.Locale.ROOT);
        for (String path : paths(RequestMethod.POST)) {
            assertThat(mvc.post().uri(filled(path)).with(user(people.loadUserByUsername(name))))
                    .as(path)
                    .hasStatus(403);
        }
    }

    private static boolean may(Role role, String path) {
        String part = path.substring(SETTINGS.length() + 1).split("/")[0];
        return role == Role.ADMINISTRATOR || role == Role.OFFICE && OFFICE_KEEPS.contains(part);
    }

    private List<String> paths(RequestMethod method) {
        return mappings.getHandlerMethods().keySet().stream()
                .filter(mapping -> mapping.getMethodsCondition().getMethods().contains(method))
                .map(RequestMappingInfo::getPatternValues)
                .flatMap(Set::stream)
                .filter(path -> path.startsWith(SETTINGS))
                .sorted()
                .toList();
    }

    private String filled(String path) {
        return path.replace("{production}", production.code)
                .replace("{subject}", "CARD")
                .replace("{id}", UUID.randomUUID().toString())
                .replace("{date}", "2031-03-03");
    }
}
