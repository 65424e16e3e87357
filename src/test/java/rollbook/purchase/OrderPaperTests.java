package rollbook.purchase;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.mail.Session;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Properties;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.Display;

/** What a supplier gets to read: the order on paper and the letter with it. */
@PortalTest
class OrderPaperTests {
    private static final Path LOOK_AT = Path.of("target/orders");

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    ApplicationContext portal;

    @Autowired
    Orders orders;

    @Autowired
    Display display;

    @Autowired
    JdbcClient jdbc;

    private TestProduction production;
    private Membership office;
    private OrderDesk desk;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        office = production.as(Role.OFFICE);
        production.place("The set", false);
        desk = new OrderDesk(portal, production);
    }

    /** 4 × 199.00, 2 × 3 weeks at 60.00 and 25.00 for the delivery are 1181.00. */
    @Test
    void thePaperTellsWhatIsOrderedAndWhatItComesTo() throws Exception {
        PurchaseOrder order = placed();
        MvcTestResult result = get(order, "order.pdf");
        assertThat(result)
                .hasStatusOk()
                .hasContentType("application/pdf")
                .headers()
                .hasValue(
                        "Content-Disposition",
                        "inline; filename=\"order-" + production.code.toLowerCase(Locale.ROOT) + "-1.pdf\"");
        String text = text(result.getResponse().getContentAsByteArray(), "placed.pdf");
        assertThat(text)
                .contains(
                        "Purchase order 1",
                        production.code + "-1",
                        "Approved by OFFICE on " + display.shortDate(desk.today),
                        display.date(desk.today.minusDays(10)),
                        "Test " + production.code,
                        "Test supplier",
                        "Order desk, Orders, orders@supplier.example, +00 000 000 010",
                        "the set",
                        "test drive (drive, 4.00 TB) 4 bought €199.00 €796.00",
                        "test reader (reader) 2 hired for 3 weeks €60.00 a week €360.00",
                        "Delivery €25.00",
                        "Total €1,181.00",
                        "Ring before noon.",
                        "1 / 1")
                .doesNotContain("orders nothing");
    }

    @Test
    void whatIsNotApprovedSaysSoAndSoDoesWhatIsCalledOff() throws Exception {
        PurchaseOrder proposed = desk.proposed(desk.line(desk.drive(), 1, null, null));
        assertThat(text(pdf(proposed), "proposed.pdf"))
                .contains("Not approved. This is a proposal and orders nothing.");
        orders.decline(office, proposed.id(), "too dear", proposed.version());
        assertThat(text(pdf(proposed), "declined.pdf")).contains("Declined. This orders nothing.");
        PurchaseOrder placed = placed();
        orders.cancel(office, placed.id(), "shoot is over", placed.version());
        assertThat(text(pdf(placed), "cancelled.pdf")).contains("Called off. This orders nothing.");
    }

    @Test
    void aLongOrderGoesOnOverPagesWithItsHeading() throws Exception {
        NewOrder.Line[] lines = new NewOrder.Line[60];
        Arrays.setAll(lines, i -> desk.line(desk.drive(), i + 1, null, null));
        String text = text(pdf(desk.proposed(lines)), "long.pdf");
        assertThat(text).contains("1 / 3", "3 / 3");
        assertThat(text.split("Bought or hired", -1))
                .as("a heading on each of two pages with lines")
                .hasSize(3);
    }

    @Test
    void theLetterIsADraftToTheContactForOrdersWithThePaperInIt() throws Exception {
        PurchaseOrder order = placed();
        MvcTestResult result = get(order, "order.eml");
        assertThat(result).hasStatusOk().hasContentType("message/rfc822");
        byte[] file = result.getResponse().getContentAsByteArray();
        MimeMessage letter = new MimeMessage(Session.getInstance(new Properties()), new ByteArrayInputStream(file));
        assertThat(letter.getHeader("X-Unsent")).containsExactly("1");
        assertThat(letter.getHeader("Message-ID")).isNull();
        assertThat(letter.getHeader("From")).isNull();
        assertThat(letter.getAllRecipients()).extracting(Object::toString).containsExactly("orders@supplier.example");
        assertThat(letter.getSubject()).isEqualTo("Purchase order " + production.code + "-1, Test " + production.code);
        MimeMultipart parts = (MimeMultipart) letter.getContent();
        assertThat(parts.getCount()).isEqualTo(2);
        assertThat((String) parts.getBodyPart(0).getContent())
                .contains("4 × test drive (drive, 4.00 TB), bought, €199.00", "Total: €1,181.00", "Ring before noon.");
        assertThat(parts.getBodyPart(1).getFileName()).endsWith("-1.pdf");
        assertThat(text(parts.getBodyPart(1).getInputStream().readAllBytes(), "attached.pdf"))
                .contains("Purchase order 1");
    }

    @Test
    void theOrdersPageLeadsToPaperAndLetterAndOpensTheMailProgram() throws Exception {
        PurchaseOrder order = placed();
        Document page = Jsoup.parse(get(order, "").getResponse().getContentAsString());
        String mail = page.select("a[href^=mailto:]").attr("href");
        assertThat(mail).startsWith("mailto:orders@supplier.example?subject=Purchase%20order%20" + production.code);
        assertThat(URLDecoder.decode(mail, StandardCharsets.UTF_8)).contains("\r\n4 × test drive", "€1,181.00");
        assertThat(page.select("a[href$=order.pdf], a[href$=order.eml]")).hasSize(2);
        jdbc.sql("delete from supplier_contact where supplier_id = ?")
                .param(desk.supplier)
                .update();
        page = Jsoup.parse(get(order, "").getResponse().getContentAsString());
        assertThat(page.select("a[href^=mailto:]")).isEmpty();
        assertThat(get(order, "order.eml")).hasStatusOk();
    }

    private PurchaseOrder placed() {
        return desk.placed(2, desk.line(desk.drive(), 4, null, null), desk.line(desk.reader(), 2, 3, null));
    }

    private byte[] pdf(PurchaseOrder order) {
        MvcTestResult result = get(order, "order.pdf");
        assertThat(result).hasStatusOk();
        return result.getResponse().getContentAsByteArray();
    }

    private MvcTestResult get(PurchaseOrder order, String page) {
        return mvc.get()
                .uri(production.path("orders/" + order.id() + (page.isEmpty() ? "" : "/" + page)))
                .with(production.signedInAs(Role.READER))
                .exchange();
    }

    private static String text(byte[] pdf, String name) throws IOException {
        Files.createDirectories(LOOK_AT);
        Files.write(LOOK_AT.resolve(name), pdf);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return new PDFTextStripper().getText(document);
        }
    }
}
