package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.UnsupportedEncodingException;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.springframework.http.HttpStatus;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.TestProduction;

/** A set with one camera, one card, one reader and the two legs of its copy plan, and a browser to look at its pages. */
final class Scene {
    final TestProduction production;
    final Membership wrangler;
    final UUID set;
    final UUID unit;
    final UUID camera;
    final UUID day;
    final UUID format;
    final UUID card;
    final UUID reader;
    final UUID shuttleLeg;
    final UUID archiveLeg;
    final UUID shuttle;
    final UUID archive;

    private final MockMvcTester mvc;

    Scene(Fixtures fixtures, MockMvcTester mvc) {
        this.mvc = mvc;
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        set = production.place("Set", false);
        unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 1, "SHOOTING");
        format = production.format("Test format");
        card = production.item("CARD-1", "CARD", set, null);
        reader = production.item("READER-1", "READER", set, null);
        shuttleLeg = production.leg("Shuttle", set, true);
        archiveLeg = production.leg("Archive", set, true);
        shuttle = production.item("SHUTTLE-1", "DRIVE", set, shuttleLeg);
        archive = production.item("ARCHIVE-1", "DRIVE", set, archiveLeg);
    }

    MvcTestResult get(String page, Role role) {
        return mvc.get()
                .uri(production.path(page))
                .with(production.signedInAs(role))
                .exchange();
    }

    MvcTestResult post(String page, Role role, Map<String, ?> form) {
        var request = mvc.post().uri(production.path(page)).with(production.signedInAs(role));
        form.forEach((name, value) -> request.param(name, value.toString()));
        return request.exchange();
    }

    /** The page as its wrangler sees it. */
    Document see(String page) {
        MvcTestResult result = get(page, Role.WRANGLER);
        assertThat(result).hasStatus(HttpStatus.OK);
        return html(result);
    }

    static Document html(MvcTestResult result) {
        try {
            return Jsoup.parse(result.getResponse().getContentAsString());
        } catch (UnsupportedEncodingException e) {
            throw new AssertionError(e);
        }
    }

    /** The id at the end of the address that the browser is sent to. */
    static UUID sentTo(MvcTestResult result) {
        assertThat(result).hasStatus3xxRedirection();
        String location = result.getResponse().getRedirectedUrl();
        return UUID.fromString(location.substring(location.lastIndexOf('/') + 1));
    }

    Map<String, Object> startForm() {
        return Map.of(
                "reader", reader,
                "legs[0].leg", shuttleLeg,
                "legs[0].item", shuttle,
                "legs[1].leg", archiveLeg,
                "legs[1].item", archive,
                "extra", "");
    }
}
