package rollbook.format;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.UnsupportedEncodingException;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Role;
import rollbook.recording.RecordingFormat;
import rollbook.testing.Fixtures;
import rollbook.testing.FormValues;
import rollbook.testing.PortalTest;
import rollbook.testing.StatementCount;
import rollbook.testing.TestProduction;

@PortalTest
class FormatPagesTests {
    @Autowired
    MockMvcTester mvc;

    @Autowired
    Fixtures fixtures;

    @Autowired
    RecordingFormats formats;

    @Autowired
    StatementCount statements;

    TestProduction production;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
    }

    @Test
    void theListSaysWhatEachFormatFills() {
        UUID place = production.place("Cart", false);
        production.item("CARD-001", "CARD", place, null);
        production.item("CARD-002", "CARD", place, null);
        production.format("Main camera");
        Document page = page(get("formats", Role.READER));
        // By hand: 1,000,000 bytes a frame × 24 = 24 MB/s; × 8 = 192 Mb/s; × 60 = 1.44 GB a minute, × 60 = 86.4 GB an
        // hour;
        // 1,000 GB ÷ 1.44 GB = 694.44 minutes.
        assertThat(page.select("tbody tr td").eachText()).containsExactly("24.00", "192.00", "1.44", "86.40", "694.4");
        assertThat(page.select("thead th").last().text()).isEqualTo("Minutes on 1.00 TB (2 cards)");
        assertThat(page.select(".sentence").text())
                .isEqualTo("Main camera fills 1.44 GB in a minute: a card of 1.00 TB lasts 694.4 minutes.");
        assertThat(page.select("a[href$=formats/new]")).isEmpty();
    }

    @Test
    void anEmptyListSaysWhatBelongsThere() {
        assertThat(page(get("formats", Role.OFFICE)).select(".empty")).hasSize(1);
    }

    @ParameterizedTest
    @EnumSource(CodingKind.class)
    void everyKindHasAFormThatCanBeFilledAndSaved(CodingKind kind) {
        Document form = page(get("formats/new?kind=" + kind, Role.WRANGLER));
        Map<String, String> values = FormValues.of(form, "form.format-form");
        values.put("name", "Format " + kind);
        values.computeIfPresent("frameBytes", (name, empty) -> "917,504");
        values.computeIfPresent("bitRate", (name, empty) -> "185.5");
        values.computeIfPresent("compressionRatio", (name, empty) -> "3.5");
        assertThat(post("formats/new", Role.WRANGLER, values)).hasStatus3xxRedirection();
        NamedFormat saved = formats.list(production.id).get(0);
        assertThat(CodingKind.of(saved.format().coding())).isEqualTo(kind);
        // What is shown of it again and saved unchanged is the same format.
        Map<String, String> again = FormValues.of(page(get("formats/" + saved.id(), Role.OFFICE)), "form.format-form");
        assertThat(post("formats/" + saved.id(), Role.OFFICE, again)).hasStatus3xxRedirection();
        assertThat(formats.get(production.id, saved.id()).format()).isEqualTo(saved.format());
    }

    @Test
    void aStandardFormatFillsTheForm() {
        Map<String, String> values =
                FormValues.of(page(get("formats/new?preset=vc3-1235", Role.OFFICE)), "form.format-form");
        // SMPTE ST 2019-1, compression id 1235: 917,504 bytes a frame.
        assertThat(values).containsEntry("frameBytes", "917504").containsEntry("kind", "FIXED_FRAME");
        assertThat(post("formats/new", Role.OFFICE, values)).hasStatus3xxRedirection();
    }

    @Test
    void aPreviewComputesAndSavesNothing() {
        Map<String, String> values = fixedFrame("Main camera", "1000000");
        values.put("preview", "true");
        MvcTestResult result = post("formats/new", Role.WRANGLER, values);
        assertThat(result).hasStatusOk();
        assertThat(page(result).select("form.format-form .facts dd").eachText()).contains("24.00", "1.44");
        assertThat(page(result).html()).doesNotContain("??");
        assertThat(formats.list(production.id)).isEmpty();
    }

    @Test
    void everythingThatIsWrongIsSaidAtItsFieldAndNothingTypedIsLost() {
        Map<String, String> values = fixedFrame("", "many");
        values.put("frameRate", "fast");
        values.put("pictureWidth", "0");
        values.put("audioBits", "20");
        values.put("containerOverhead", "100");
        MvcTestResult result = post("formats/new", Role.WRANGLER, values);
        assertThat(result).hasStatus(422);
        Document page = page(result);
        for (String field :
                new String[] {"name", "frameBytes", "frameRate", "pictureWidth", "audioBits", "containerOverhead"}) {
            assertThat(page.select("#" + field + "-error").text())
                    .as(field)
                    .isNotBlank()
                    .doesNotContain("??");
        }
        assertThat(FormValues.of(page, "form.format-form"))
                .containsEntry("frameBytes", "many")
                .containsEntry("frameRate", "fast");
        assertThat(page.title()).startsWith("Error: ");
        assertThat(formats.list(production.id)).isEmpty();
    }

    @Test
    void aTakenNameIsSaidAtTheName() {
        production.format("Main camera");
        MvcTestResult result = post("formats/new", Role.OFFICE, fixedFrame("main camera", "1"));
        assertThat(result).hasStatus(422);
        assertThat(page(result).select("#name-error").text()).contains("main camera");
    }

    @Test
    void theSecondOfTwoPeopleIsToldThatItChangedMeanwhile() {
        UUID id = production.format("Main camera");
        Map<String, String> values = fixedFrame("Main camera", "2000000");
        assertThat(post("formats/" + id, Role.OFFICE, values)).hasStatus3xxRedirection();
        assertThat(post("formats/" + id, Role.WRANGLER, values)).hasStatus(409);
    }

    @Test
    void postAndReaderReadOnly() {
        UUID id = production.format("Main camera");
        for (Role role : new Role[] {Role.POST, Role.READER}) {
            assertThat(get("formats/" + id, role)).hasStatusOk();
            assertThat(page(get("formats/" + id, role)).select("main form")).isEmpty();
            assertThat(get("formats/new", role)).hasStatus(403);
            assertThat(post("formats/new", role, fixedFrame("Other", "1"))).hasStatus(403);
            assertThat(post("formats/" + id, role, fixedFrame("Other", "1"))).hasStatus(403);
            assertThat(post("formats/" + id + "/remove", role, Map.of())).hasStatus(403);
        }
        RecordingFormat kept = formats.get(production.id, id).format();
        assertThat(kept.name()).isEqualTo("Main camera");
        assertThat(post("formats/" + id + "/remove", Role.ADMINISTRATOR, Map.of()))
                .hasStatus3xxRedirection();
        assertThat(formats.list(production.id)).isEmpty();
    }

    @Test
    void anotherProductionsFormatAnswersAsAnUnknownOne() {
        UUID id = fixtures.production().format("Main camera");
        assertThat(get("formats/" + id, Role.OFFICE)).hasStatus(404);
        assertThat(post("formats/" + id, Role.OFFICE, fixedFrame("Mine", "1"))).hasStatus(404);
        assertThat(post("formats/" + id + "/remove", Role.OFFICE, Map.of())).hasStatus(404);
        assertThat(get("formats/" + UUID.randomUUID(), Role.OFFICE)).hasStatus(404);
    }

    @Test
    void aRemovalOfAFormatInUseIsRefusedWithAReason() {
        UUID id = production.format("Main camera");
        UUID unit = production.unit("Main unit");
        production.plan(production.day(unit, 1, "PLANNED"), production.camera(unit, "A"), id, "60");
        MvcTestResult result = post("formats/" + id + "/remove", Role.OFFICE, Map.of());
        assertThat(result).hasStatus(409);
        assertThat(page(result).text()).contains("The format Main camera can’t be removed");
    }

    @Test
    void theStatementsDoNotGrowWithTheFormats() throws Exception {
        production.format("Format 0");
        int few = statements.during(() -> get("formats", Role.READER));
        for (int i = 1; i < 12; i++) {
            production.format("Format " + i);
        }
        assertThat(statements.during(() -> get("formats", Role.READER)))
                .isEqualTo(few)
                .isLessThanOrEqualTo(12);
    }

    private static Map<String, String> fixedFrame(String name, String frameBytes) {
        Map<String, String> values = new LinkedHashMap<>(Map.of(
                "kind",
                "FIXED_FRAME",
                "version",
                "0",
                "name",
                name,
                "pictureWidth",
                "2048",
                "pictureHeight",
                "1080",
                "frameRate",
                "24",
                "frameBytes",
                frameBytes,
                "frameOverhead",
                "0",
                "containerOverhead",
                "0"));
        values.putAll(Map.of("audioChannels", "0", "audioSampleRate", "48000", "audioBits", "24"));
        return values;
    }

    private MvcTestResult get(String page, Role role) {
        return mvc.get()
                .uri(production.path(page))
                .with(production.signedInAs(role))
                .exchange();
    }

    private MvcTestResult post(String page, Role role, Map<String, String> values) {
        var request = mvc.post().uri(production.path(page)).with(production.signedInAs(role));
        values.forEach(request::param);
        return request.exchange();
    }

    private static Document page(MvcTestResult result) {
        try {
            return Jsoup.parse(result.getResponse().getContentAsString());
        } catch (UnsupportedEncodingException e) {
            throw new AssertionError(e);
        }
    }
}
