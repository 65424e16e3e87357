package rollbook.shipment;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import org.springframework.test.web.servlet.assertj.MvcTestResult;
import rollbook.inventory.MediaItems;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;
import rollbook.testing.RenderedPdf;
import rollbook.verification.ManifestIntake;

/** What comes out of the printer, read back as pixels and text. */
@PortalTest
class PapersTests {
    private static final Path LOOK_AT = Path.of("target/papers");
    private static final int ROLLS = 24;
    private static final double A4_WIDTH = 210;
    private static final double A4_HEIGHT = 297;

    @Autowired
    Fixtures fixtures;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    ManifestIntake intake;

    @Autowired
    MediaItems items;

    @Autowired
    Jobs jobs;

    @Autowired
    Shipments shipments;

    @Autowired
    Packing packing;

    @Autowired
    Sending sending;

    @Autowired
    MockMvcTester mvc;

    private ShipmentScene scene;
    private UUID id;

    @BeforeEach
    void sendABox() throws IOException {
        scene = new ShipmentScene(fixtures, rolls, offloads, intake, items, jobs);
        scene.proven("A001", scene.shuttle);
        for (int number = 2; number <= ROLLS; number++) {
            scene.copied("A%03d".formatted(number), scene.shuttle);
        }
        id = packing.pack(scene.wrangler, scene.toPost("courier"), scene.items(scene.shuttle, scene.tape));
        sending.send(scene.wrangler, id, ShipmentScene.tomorrow(), 0);
    }

    @Test
    void thePackingSlipListsTheItemsAndItsSymbolLeadsToTheShipment() throws IOException {
        try (RenderedPdf pdf = print("packing-slip")) {
            assertThat(pdf.pages()).isEqualTo(1);
            assertThat(pdf.embedsItsFonts()).isTrue();
            Rectangle2D page = new Rectangle2D.Double(0, 0, A4_WIDTH, A4_HEIGHT);
            assertThat(pdf.text(0, page))
                    .contains(
                            "Packing slip, shipment 1",
                            "SHUTTLE-1",
                            "TAPE-1",
                            "no rolls",
                            "S-1, S-2",
                            "2.3 kg",
                            "courier",
                            "Received: name, date, signature")
                    .doesNotContain("??");
            assertThat(pdf.qr(0, page)).hasValue("http://localhost" + scene.production.path("shipments/" + id));
        }
    }

    @Test
    void theTransmittalListsEachRollWithItsBytesItsVerdictAndTheDigestsOfItsManifests() throws IOException {
        String digest =
                shipments.sent(scene.production.id, id).get(0).manifests().get(0);
        try (RenderedPdf pdf = print("transmittal")) {
            assertThat(pdf.pages()).isEqualTo(2);
            Rectangle2D page = new Rectangle2D.Double(0, 0, A4_WIDTH, A4_HEIGHT);
            assertThat(pdf.text(0, page))
                    .contains(
                            "Transmittal, shipment 1", "A001", "1,000,000 bytes", "proven", "unknown", digest, "1 / 2");
            assertThat(pdf.text(1, page))
                    .contains("A024", "2 items, 24 entries of rolls, 24.0 MB", "Sent: name, date, signature");
        }
    }

    private RenderedPdf print(String paper) throws IOException {
        MvcTestResult result = mvc.get()
                .uri(scene.production.path("shipments/" + id + "/" + paper + ".pdf"))
                .with(scene.production.signedInAs(Role.READER))
                .exchange();
        assertThat(result).hasStatus(200).hasContentType("application/pdf");
        byte[] pdf = result.getResponse().getContentAsByteArray();
        Files.createDirectories(LOOK_AT);
        Files.write(LOOK_AT.resolve(paper + ".pdf"), pdf);
        return new RenderedPdf(pdf);
    }
}
