package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.UnsupportedEncodingException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.TestProduction;

/** A production with a card, two drives and rolls, and a browser of its people. */
final class DocumentScene {
    static final String EMPTY_MD5 = "d41d8cd98f00b204e9800998ecf8427e";

    final TestProduction production;
    final Membership wrangler;
    final UUID set;
    final UUID card;
    final UUID shuttle;
    final UUID vault;
    private final UUID camera;
    private final UUID day;
    private final UUID format;
    private final MockMvcTester mvc;
    private final Rolls rolls;

    DocumentScene(Fixtures fixtures, MockMvcTester mvc, Rolls rolls) {
        this.mvc = mvc;
        this.rolls = rolls;
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        set = production.place("Set", false);
        UUID unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 1, "SHOOTING");
        format = production.format("F");
        card = production.item("CARD-1", "CARD", set, null);
        shuttle = production.item("SHUTTLE-1", "DRIVE", set, null);
        vault = production.item("VAULT-1", "ARRAY", set, null);
    }

    UUID roll(String code) {
        UUID of = production.item("CARD-" + code, "CARD", set, null);
        UUID roll = rolls.load(wrangler, code, camera, day, of, format);
        rolls.pull(wrangler, roll, BigDecimal.TEN);
        return roll;
    }

    /** A checksum list of one file in each of the folders. */
    static String list(String... folders) {
        StringBuilder list = new StringBuilder();
        for (String folder : folders) {
            list.append(EMPTY_MD5).append("  ").append(folder).append("/one.mxf\n");
        }
        return list.toString();
    }

    static MockMultipartFile file(String name, String content) {
        return file(name, content.getBytes(StandardCharsets.UTF_8));
    }

    static MockMultipartFile file(String name, byte[] content) {
        return new MockMultipartFile("file", name, "application/octet-stream", content);
    }

    MvcTestResult send(Role role, String describes, MockMultipartFile... files) {
        MockMvcTester.MockMultipartMvcRequestBuilder request =
                mvc.post().uri(production.path("documents")).multipart();
        for (MockMultipartFile file : files) {
            request.file(file);
        }
        return request.param("describes", describes)
                .with(production.signedInAs(role))
                .exchange();
    }

    /** What the page says that a delivery leads to. */
    Document told(MvcTestResult sent) throws UnsupportedEncodingException {
        assertThat(sent).hasStatus3xxRedirection();
        String address = sent.getResponse().getRedirectedUrl();
        assertThat(address).isNotNull();
        return see(address.substring(production.path("").length()));
    }

    /** The one document that a delivery stored or found. */
    UUID documentOf(MvcTestResult sent) throws UnsupportedEncodingException {
        Element link = told(sent).selectFirst("th a");
        assertThat(link).isNotNull();
        String address = link.attr("href");
        return UUID.fromString(address.substring(address.lastIndexOf('/') + 1));
    }

    UUID sendOne(String describes, String name, String content) throws UnsupportedEncodingException {
        return documentOf(send(Role.WRANGLER, describes, file(name, content)));
    }

    MvcTestResult get(String page, Role role) {
        return mvc.get()
                .uri(production.path(page))
                .with(production.signedInAs(role))
                .exchange();
    }

    Document see(String page) throws UnsupportedEncodingException {
        return see(page, Role.WRANGLER);
    }

    Document see(String page, Role role) throws UnsupportedEncodingException {
        MvcTestResult result = get(page, role);
        assertThat(result).hasStatusOk();
        return parsed(result);
    }

    static Document parsed(MvcTestResult result) throws UnsupportedEncodingException {
        return Jsoup.parse(result.getResponse().getContentAsString());
    }

    MvcTestResult post(String page, Role role, Map<String, List<String>> fields) {
        MockMvcTester.MockMvcRequestBuilder request = mvc.post().uri(production.path(page));
        fields.forEach((name, values) -> request.param(name, values.toArray(String[]::new)));
        return request.with(production.signedInAs(role)).exchange();
    }

    /** Sends a form of a page as a browser would, with some fields filled in. */
    MvcTestResult submit(Element form, Map<String, String> filled) {
        Map<String, List<String>> fields = new java.util.LinkedHashMap<>();
        for (var pair : ((org.jsoup.nodes.FormElement) form).formData()) {
            fields.computeIfAbsent(pair.key(), key -> new java.util.ArrayList<>())
                    .add(pair.value());
        }
        filled.forEach((name, value) -> fields.put(name, List.of(value)));
        fields.remove("_csrf");
        return post(form.attr("action").substring(production.path("").length()), Role.WRANGLER, fields);
    }

    static String sentence(Document page) {
        Element sentence = page.selectFirst("#sentence");
        return sentence == null ? "" : sentence.text();
    }
}
