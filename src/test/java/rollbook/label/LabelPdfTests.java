package rollbook.label;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.RenderedPdf;
import rollbook.testing.TestProduction;

/** What comes out of the printer: pages are drawn as pixels, and read by a reader of QR codes and by one of text. */
@PortalTest
class LabelPdfTests {
    private static final Path LOOK_AT = Path.of("target/labels");

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    JdbcClient jdbc;

    private TestProduction production;
    private UUID set;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        set = production.place("Set", false);
    }

    @ParameterizedTest
    @EnumSource(SheetKind.class)
    void everyLabelIsInItsPlaceAndItsCodeLeadsToItsItem(SheetKind kind) throws Exception {
        SheetGrid grid = kind.grid();
        int count = kind.single() ? 3 : grid.labelsPerPage() + 1;
        int first = kind.single() ? 1 : 3;
        List<String> codes =
                IntStream.rangeClosed(1, count).mapToObj("CARD-%03d"::formatted).toList();
        codes.forEach(code -> production.item(code, "CARD", set, null));
        String query = "items=%s to %s&first=%d&sheet=%s".formatted(codes.get(0), codes.get(count - 1), first, kind);
        try (RenderedPdf pdf = print(query, kind + ".pdf")) {
            assertThat(pdf.pages()).isEqualTo(grid.pages(count, first));
            assertThat(pdf.widthMillimetres()).isCloseTo(grid.pageWidthMillimetres(), within(0.05));
            assertThat(pdf.heightMillimetres()).isCloseTo(grid.pageHeightMillimetres(), within(0.05));
            assertThat(pdf.embedsItsFonts()).isTrue();
            for (int position = 1; position < first; position++) {
                assertThat(pdf.inked(0, cell(grid, position)))
                        .as("position %d, which is used up", position)
                        .isEmpty();
            }
            for (int index = 0; index < count; index++) {
                int page = grid.pageOf(index, first);
                Rectangle2D cell = cell(grid, grid.positionOf(index, first));
                assertThat(pdf.qr(page, cell))
                        .as("%s on %s", codes.get(index), kind)
                        .hasValue("http://localhost" + production.path("find?code=" + codes.get(index)));
                assertThat(pdf.text(page, cell).lines())
                        .containsExactly(
                                codes.get(index), "card, 1.00 TB", "test model", "bought", "Test " + production.code);
            }
        }
    }

    /** The address on the label, opened by somebody who is signed in. */
    @Test
    void whatTheLabelLeadsToIsTheItemsPage() throws Exception {
        UUID drive = production.item("DRIVE-1", "DRIVE", set, null);
        try (RenderedPdf pdf = print("items=DRIVE-1&sheet=SINGLE_62", "one.pdf")) {
            String address = pdf.qr(0, cell(SheetKind.SINGLE_62.grid(), 1)).orElseThrow();
            assertThat(mvc.get().uri(address).with(production.signedInAs(Role.READER)))
                    .hasRedirectedUrl(production.path("media/" + drive));
        }
    }

    @ParameterizedTest
    @EnumSource(SheetKind.class)
    void aSymbolIsBlackOnWhiteWithItsQuietZone(SheetKind kind) throws Exception {
        production.item("CARD-001", "CARD", set, null);
        try (RenderedPdf pdf = print("items=CARD-001&sheet=" + kind, "symbol.pdf")) {
            LabelLayout layout = LabelLayout.of(kind.grid());
            Rectangle2D cell = cell(kind.grid(), 1);
            Rectangle2D box = new Rectangle2D.Double(
                    cell.getX() + layout.sidePaddingMillimetres(),
                    cell.getY() + layout.topPaddingMillimetres(),
                    layout.symbolMillimetres(),
                    layout.symbolMillimetres());
            String address = pdf.qr(0, cell).orElseThrow();
            double module = layout.symbolMillimetres() / QrSymbol.of(address).modules();
            Rectangle2D inked = pdf.inked(0, box).orElseThrow();
            assertThat(inked.getX()).isCloseTo(4 * module, within(0.2));
            assertThat(inked.getY()).isCloseTo(4 * module, within(0.2));
            assertThat(inked.getMaxX()).isCloseTo(layout.symbolMillimetres() - 4 * module, within(0.2));
            assertThat(inked.getMaxY()).isCloseTo(layout.symbolMillimetres() - 4 * module, within(0.2));
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = SheetKind.class,
            names = {"A4_24", "A4_14", "A4_40", "LETTER_30"})
    void theEdgeOfAnOfficePrintersPageStaysWhite(SheetKind kind) throws Exception {
        SheetGrid grid = kind.grid();
        for (int i = 1; i <= grid.labelsPerPage(); i++) {
            production.item("CARD-%03d".formatted(i), "CARD", set, null);
        }
        String query = "items=CARD-001 to CARD-%03d&sheet=%s".formatted(grid.labelsPerPage(), kind);
        try (RenderedPdf pdf = print(query, "edge.pdf")) {
            Rectangle2D page = new Rectangle2D.Double(0, 0, grid.pageWidthMillimetres(), grid.pageHeightMillimetres());
            Rectangle2D inked = pdf.inked(0, page).orElseThrow();
            assertThat(inked.getX()).isGreaterThan(4.9);
            assertThat(inked.getY()).isGreaterThan(4.9);
            assertThat(grid.pageWidthMillimetres() - inked.getMaxX()).isGreaterThan(4.9);
            assertThat(grid.pageHeightMillimetres() - inked.getMaxY()).isGreaterThan(4.9);
        }
    }

    @ParameterizedTest
    @EnumSource(SheetKind.class)
    void whatIsTooLongStaysOnItsOwnLabel(SheetKind kind) throws Exception {
        String longest = "SHUTTLE-DRIVE.OF.THE-2ND_UNIT-01";
        UUID drive = production.item(longest, "DRIVE", set, null);
        jdbc.sql("update inventory_item set model = ?, supplier = ?, ownership = 'HIRED' where id = ?")
                .params("Shuttle drive, ".repeat(6).strip(), "Ünïcödé & <Söhne> " + "W".repeat(50), drive)
                .update();
        try (RenderedPdf pdf = print("items=" + longest + "&sheet=" + kind, "long-" + kind + ".pdf")) {
            Rectangle2D cell = cell(kind.grid(), 1);
            LabelLayout layout = LabelLayout.of(kind.grid());
            assertThat(pdf.text(0, cell).replaceAll("\\s", "")).contains(longest);
            assertThat(pdf.text(0, cell)).contains("hired from Ünïcödé", "…", "Test " + production.code);
            assertThat(pdf.pages()).isEqualTo(1);
            assertThat(pdf.qr(0, cell)).isPresent();
            Rectangle2D page = new Rectangle2D.Double(
                    0, 0, kind.grid().pageWidthMillimetres(), kind.grid().pageHeightMillimetres());
            Rectangle2D inked = pdf.inked(0, page).orElseThrow();
            assertThat(inked.getMaxX()).isLessThan(cell.getMaxX() - layout.sidePaddingMillimetres() + 0.2);
            assertThat(inked.getMaxY()).isLessThan(cell.getMaxY() - layout.topPaddingMillimetres() + 0.2);
        }
    }

    @Test
    void asManyLabelsAsAreAskedForOfEachItem() throws Exception {
        production.item("CARD-1", "CARD", set, null);
        production.item("CARD-2", "CARD", set, null);
        try (RenderedPdf pdf = print("items=CARD-2 CARD-1&copies=2&sheet=SINGLE_100", "copies.pdf")) {
            assertThat(pdf.pages()).isEqualTo(4);
            Rectangle2D cell = cell(SheetKind.SINGLE_100.grid(), 1);
            assertThat(IntStream.range(0, 4).mapToObj(page -> firstLine(pdf, page, cell)))
                    .containsExactly("CARD-2", "CARD-2", "CARD-1", "CARD-1");
        }
    }

    private static String firstLine(RenderedPdf pdf, int page, Rectangle2D cell) {
        try {
            return pdf.text(page, cell).lines().findFirst().orElse("");
        } catch (IOException inMemory) {
            throw new AssertionError(inMemory);
        }
    }

    /** The label without the hair's breadth at its edges, which belongs to the neighbours too. */
    private static Rectangle2D cell(SheetGrid grid, int position) {
        return new Rectangle2D.Double(
                grid.leftOf(position),
                grid.topOf(position),
                grid.labelWidthMillimetres(),
                grid.labelHeightMillimetres());
    }

    /** Also leaves the file to be looked at. */
    private RenderedPdf print(String query, String name) throws IOException {
        String[] parameters = query.split("[&=]");
        var request = mvc.get().uri(production.path("media/labels.pdf"));
        for (int i = 0; i < parameters.length; i += 2) {
            request = request.param(parameters[i], parameters[i + 1]);
        }
        MvcTestResult result = request.with(production.signedInAs(Role.READER)).exchange();
        assertThat(result).hasStatus(200).hasContentType("application/pdf");
        byte[] pdf = result.getResponse().getContentAsByteArray();
        Files.createDirectories(LOOK_AT);
        Files.write(LOOK_AT.resolve(name), pdf);
        return new RenderedPdf(pdf);
    }
}
