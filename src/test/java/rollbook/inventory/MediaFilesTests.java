package rollbook.inventory;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.UnsupportedEncodingException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockMultipartFile;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.MediaKind;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;

/** Lists of items that go out and come in as files. */
@PortalTest
class MediaFilesTests {
    private static final String HEADER = "Code;Kind;Model;Capacity GB;Place\r\n";

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    MediaItems items;

    @Autowired
    Inventory inventory;

    private TestProduction production;
    private UUID set;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        set = production.place("Set", false);
    }

    @Test
    void aListThatIsWrittenReadsBackTheSame() throws Exception {
        UUID leg = production.leg("Shuttle", set, true);
        inventory.registerRun(
                production.as(Role.OFFICE),
                item(MediaKind.CARD, "x", "=cmd()", "@home", null),
                new NumberRun("C-", 1, 2, 3));
        inventory.register(
                production.as(Role.OFFICE), item(MediaKind.DRIVE, "D-1", "\"quoted\"; 'model', ünï", "'+holder", leg));
        String written = export(production);
        assertThat(written)
                .startsWith("\uFEFFCode,Kind,Model,Capacity GB,Read MB/s,")
                .contains("C-01,card,'=cmd(),960.000000001,0.5,,,hired,'-,", ",'@home,blank\r\n")
                .doesNotContain(",=", ",@");

        TestProduction other = fixtures.production();
        UUID place = other.place("Set", false);
        other.leg("Shuttle", place, true);
        Document preview = preview(other, written.getBytes(StandardCharsets.UTF_8), 200);
        assertThat(preview.select("#sentence").text()).startsWith("All 4 items can be registered.");
        assertThat(items.list(other.id)).as("nothing is saved by looking").isEmpty();
        assertThat(confirm(other, travelled(preview))).hasRedirectedUrl(other.path("media"));
        assertThat(export(other)).isEqualTo(written);
        assertThat(items.findByCode(other.id, "D-1").orElseThrow().model()).isEqualTo("\"quoted\"; 'model', ünï");
    }

    @Test
    void aPreviewShowsEveryBadLineAndSavesNothingEvenIfConfirmed() throws Exception {
        production.item("CARD-9", "CARD", set, null);
        String text = "\n" + HEADER
                + "CARD-1;card;x;960;Set\r\nCARD-2;spoon;x;0;Moon\r\nCARD-9;card;x;960;Set\r\n\"CARD-3;card;x;960;Set";
        Document preview = preview(production, text.getBytes(StandardCharsets.UTF_8), 200);
        assertThat(preview.select("#sentence").text()).isEqualTo("3 lines are wrong and one right. Nothing is saved.");
        assertThat(preview.select("section").first().select("tbody tr").stream()
                        .map(row -> row.select("th, td").eachText())
                        .map(cells -> cells.get(0) + ", " + cells.get(1) + ": " + cells.get(2)))
                .containsExactly(
                        "Line 4, Kind: “spoon” is none of the words that belong here.",
                        "Line 4, Capacity GB: “0” is not a number above zero.",
                        "Line 4, Place: “Moon” is not known in this production.",
                        "Line 5, Code: CARD-9 is registered already.",
                        "Line 6, The whole line: A quotation mark is not closed on this line, or something follows a closed one.");
        assertThat(preview.select("section").first().select("tbody tr").get(2).text())
                .contains("Use one of: Set.");
        assertThat(preview.select("form[action$=confirm]")).isEmpty();
        assertThat(travelled(preview))
                .as("line numbers stay when the text comes back")
                .isEqualTo(text.replace("\r\n", "\n"));
        assertThat(confirm(production, travelled(preview))).hasStatus(422);
        assertThat(items.list(production.id)).hasSize(1);
    }

    @Test
    void aConfirmationIsCheckedAgainAndAllOrNothing() throws Exception {
        Document preview = preview(
                production,
                (HEADER + "CARD-1;card;x;960;Set\nCARD-2;card;x;960;Set").getBytes(StandardCharsets.UTF_8),
                200);
        production.item("CARD-2", "CARD", set, null);
        MvcTestResult late = confirm(production, travelled(preview));
        assertThat(late).hasStatus(422);
        assertThat(document(late).select("tbody tr").first().text())
                .contains("Line 3", "CARD-2 is registered already.");
        assertThat(items.list(production.id)).hasSize(1);
    }

    @Test
    void theExampleCanBeImportedAsItIs() throws Exception {
        MvcTestResult example = mvc.get()
                .uri(production.path("media/import/example.csv"))
                .with(production.signedInAs(Role.OFFICE))
                .exchange();
        Document preview = preview(production, example.getResponse().getContentAsByteArray(), 200);
        assertThat(preview.select("#sentence").text()).startsWith("All 2 items can be registered.");
        assertThat(confirm(production, travelled(preview))).hasStatus(302);
    }

    @Test
    void whatIsNoListIsRefusedWithAReason() throws Exception {
        assertThat(preview(production, new byte[0], 422).select("#file-error").text())
                .contains("No list was sent.");
        assertThat(preview(production, new byte[] {'C', (byte) 0xE4, 'r'}, 422)
                        .select("#file-error")
                        .text())
                .contains("not text in UTF-8");
        assertThat(preview(production, new byte[1_000_001], 422)
                        .select("#file-error")
                        .text())
                .contains("larger than 1 MB");
        assertThat(preview(production, "x\n".repeat(5_001).getBytes(StandardCharsets.UTF_8), 422)
                        .select("#file-error")
                        .text())
                .contains("5,001 lines, more than 5,000");
    }

    @Test
    void aListInUtf16IsReadByItsMark() throws Exception {
        byte[] text = ("\uFEFF" + "Code\tKind\tModel\tCapacity GB\tPlace\nÄ\nCARD-1\tcard\tü\t960\tSet")
                .getBytes(StandardCharsets.UTF_16LE);
        Document preview = preview(production, text, 200);
        assertThat(preview.select("td:contains(ü)")).hasSize(1);
    }

    @Test
    void aListAsLongAsAllowedIsReadAndRegistered() throws Exception {
        var text = new StringBuilder(HEADER);
        for (int i = 1; i < 5_000; i++) {
            text.append("CARD-").append(10_000 + i).append(";card;model;960;Set\n");
        }
        Document preview = preview(production, text.toString().getBytes(StandardCharsets.UTF_8), 200);
        assertThat(preview.select("tbody tr")).hasSize(500);
        assertThat(confirm(production, travelled(preview))).hasStatus(302);
        assertThat(items.list(production.id)).hasSize(4_999);
    }

    private NewItem item(MediaKind kind, String code, String model, String holder, UUID leg) {
        return new NewItem(
                kind,
                new ItemDetails(
                        code,
                        code.equals("x") ? "" : "SN " + code,
                        model,
                        960_000_000_001L,
                        500_000L,
                        null,
                        Ownership.HIRED,
                        "-",
                        12_345L,
                        LocalDate.of(2031, 2, 28),
                        leg),
                set,
                holder);
    }

    private String export(TestProduction from) throws UnsupportedEncodingException {
        MvcTestResult file = mvc.get()
                .uri(from.path("media.csv"))
                .with(from.signedInAs(Role.READER))
                .exchange();
        assertThat(file).hasStatus(200).hasHeader("Content-Type", "text/csv;charset=UTF-8");
        return file.getResponse().getContentAsString();
    }

    private Document preview(TestProduction into, byte[] file, int status) throws UnsupportedEncodingException {
        MvcTestResult preview = mvc.post()
                .multipart()
                .file(new MockMultipartFile("file", "list.csv", "text/csv", file))
                .uri(into.path("media/import"))
                .with(into.signedInAs(Role.OFFICE))
                .exchange();
        assertThat(preview).hasStatus(status);
        return document(preview);
    }

    private MvcTestResult confirm(TestProduction into, String csv) {
        return mvc.post()
                .uri(into.path("media/import/confirm"))
                .param("csv", csv)
                .with(into.signedInAs(Role.OFFICE))
                .exchange();
    }

    /** What a browser would send back: it drops the line end right after the tag. */
    private static String travelled(Document preview) {
        return preview.select("textarea[name=csv]")
                .first()
                .wholeText()
                .replaceFirst("^\n", "")
                .replace("\r\n", "\n");
    }

    private static Document document(MvcTestResult result) throws UnsupportedEncodingException {
        return Jsoup.parse(result.getResponse().getContentAsString());
    }
}
