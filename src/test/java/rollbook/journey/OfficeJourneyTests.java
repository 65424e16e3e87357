package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Two weeks of an office, by what a person sees: drives are ordered twelve days ago, are late, come in parts, one goes back
 * to its supplier as soon as that is safe, boxes travel, one of them is lost, and post says what it has. The demo goes
 * before: somebody's rolls lie on what is sent.
 */
class OfficeJourneyTests {
    private static final Duration SOON = Duration.ofSeconds(30);
    private static final int DESK = 1280;
    private static final int PHONE = 390;
    private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("EEE d MMM uuuu", Locale.UK);

    private static final LocalDate TODAY = LocalDate.now(ZoneId.of("Europe/Lisbon"));

    @TempDir
    Path folder;

    @Test
    void theOfficeOrdersReceivesGivesBackAndSendsAndEveryPageSaysHowItStands() throws Exception {
        try (PortalProcess portal = PortalProcess.start(folder.resolve("data"), "--spring.profiles.active=demo");
                BrowserVisitor office = new BrowserVisitor(portal.base(), DESK);
                BrowserVisitor post = new BrowserVisitor(portal.base(), PHONE);
                BrowserVisitor receiver = new BrowserVisitor(portal.base(), PHONE);
                HttpVisitor wrangler = new HttpVisitor(portal.base());
                HttpVisitor administrator = new HttpVisitor(portal.base())) {
            signIn(office, "office");
            signIn(post, "post");
            signIn(wrangler, "wrangler");
            signIn(administrator, "administrator");

            OfficeOrder order = new OfficeOrder(office, TODAY);
            order.propose();
            order.approveAboveTheOfficesLimit(administrator);
            order.placeAndWaitInVain();
            order.receiveAPart();
            order.receiveTheRestAndClose();

            copyOntoAHiredDrive(wrangler);
            isRefusedToGiveBackTheOnlyProvenCopy(office);
            proveAnotherCopy(wrangler);
            givesItBack(office);

            OfficeShipments shipments = new OfficeShipments(office, TODAY);
            shipments.haveAReceiverWithoutAnAccountConfirm(receiver);
            shipments.loseATape();
            shipments.postConfirms(post);
            mailIsKept(administrator);

            for (BrowserVisitor visitor : new BrowserVisitor[] {office, post, receiver}) {
                assertThat(visitor.complaints()).as("complaints of the browser").isEmpty();
            }
        }
    }

    private static void signIn(Visitor visitor, String name) {
        visitor.open("/sign-in");
        visitor.fill("Sign-in name", name);
        visitor.fill("Password", "rollbook-demo");
        visitor.press("Sign in");
    }

    /** A054 waits to be copied in the demo; its card was pulled a moment ago. */
    private void copyOntoAHiredDrive(HttpVisitor wrangler) throws IOException {
        wrangler.find("A054");
        wrangler.follow("Copy the card");
        wrangler.choose("Reader", "READER-2");
        wrangler.choose("Set shuttle", "SHUTTLE-08");
        wrangler.choose("Office array", "ARRAY-1");
        wrangler.choose("Vault tape", "Not this time");
        wrangler.press("Start the offload");
        wrangler.fill("Bytes read from the card", "400 GB");
        wrangler.press("It has finished");
        upload(wrangler, "the card itself", "card");
        upload(wrangler, "SHUTTLE-08", "shuttle");
        await().atMost(SOON).untilAsserted(() -> {
            wrangler.find("A054");
            assertThat(wrangler.text()).contains("Only 1 copy is proven");
        });
    }

    private void proveAnotherCopy(HttpVisitor wrangler) throws IOException {
        upload(wrangler, "ARRAY-1", "array");
        await().atMost(SOON).untilAsserted(() -> {
            wrangler.find("A054");
            assertThat(wrangler.text()).doesNotContain("Only 1 copy is proven");
        });
    }

    private void upload(HttpVisitor wrangler, String subject, String medium) throws IOException {
        Path list = folder.resolve(medium + ".md5");
        Files.writeString(list, """
                0cc175b9c0f1b6a831c399e269772661  %1$s/A054/A054C001.mov
                92eb5ffee6ae2fec3ad71c777531578f  %1$s/A054/A054C002.mov
                """.formatted(medium));
        new WholeLoop(wrangler).upload(subject, list);
    }

    private static void isRefusedToGiveBackTheOnlyProvenCopy(BrowserVisitor office) {
        office.goTo("Orders");
        office.follow("Hire");
        office.follow("Give items back");
        assertThat(office.text())
                .contains(
                        "These must stay for now",
                        "holds the only proven copy there could be of A054.",
                        "A054: no proven copy elsewhere. Of the copy on ARRAY-1 nothing is known.");
        office.fill("Codes of what goes back", "SHUTTLE-08");
        office.fill("Note", "Return desk, receipt 131");
        office.press("Give them back");
        assertThat(office.text())
                .contains("SHUTTLE-08 can’t leave. A054 has no proven copy on another medium that is in good condition."
                        + " Of the copy on ARRAY-1 nothing is known. Make and prove another copy first.");
        office.fits();
    }

    /** What was typed is still there. */
    private static void givesItBack(BrowserVisitor office) {
        office.press("Give them back");
        assertThat(office.text()).contains("SHUTTLE-08 is back with its supplier.");
        String ended = office.text().replaceAll(".*No longer hired", "");
        assertThat(ended).containsPattern("SHUTTLE-08 .*Media supplier " + SHORT.format(TODAY) + " €45.00");
        office.fits();
        office.follow("Costs");
        assertThat(office.sentence()).startsWith("Media will have cost about €").contains("of a budget of €75,000.00");
        office.page().locator("main details summary").last().click();
        assertThat(office.text())
                .contains("SHUTTLE-08 Drives, hired Spent SHUTTLE-08 " + SHORT.format(TODAY) + " €45.00");
        office.fits();
    }

    private static void mailIsKept(HttpVisitor administrator) {
        administrator.goTo("Mail");
        administrator.follow("Mail of everybody in this production");
        assertThat(administrator.text()).contains("No mail server is set up, so nothing is sent.", "after wrap");
        assertThat(administrator.sentence()).containsPattern("\\d+ mails were written, \\w+ of which wait");
    }
}
