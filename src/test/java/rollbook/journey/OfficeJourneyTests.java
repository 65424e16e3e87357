package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
    private static final String DEMO = "/p/TIDECLERK";
    private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.UK);
    private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("EEE d MMM uuuu", Locale.UK);

    private static final LocalDate TODAY = LocalDate.now(ZoneId.of("Europe/Lisbon"));
    private static final LocalDate ORDERED = TODAY.minusDays(12);
    private static final LocalDate EXPECTED = TODAY.minusDays(6);
    private static final LocalDate CAME = TODAY.minusDays(5);

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

            String order = proposeDrives(office);
            approveAboveTheOfficesLimit(office, administrator, order);
            placeAndWaitInVain(office, order);
            receiveAPart(office, order);
            receiveTheRestAndClose(office, order);

            copyOntoAHiredDrive(wrangler);
            isRefusedToGiveBackTheOnlyProvenCopy(office);
            proveAnotherCopy(wrangler);
            givesItBack(office);

            haveAReceiverWithoutAnAccountConfirm(office, receiver);
            loseATape(office);
            postConfirms(office, post);
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

    /** Four hired for two weeks at €45.00 a week each, and €25.00 for the delivery. */
    private static String proposeDrives(BrowserVisitor office) {
        office.goTo("Orders");
        office.follow("Propose an order");
        office.choose("Item of a catalogue", "Media supplier: shuttle drive");
        office.fill("Items", "4");
        office.fill("Weeks of hire", "2");
        office.choose("For the pool of", "Set shuttle");
        office.press("Propose it");
        assertThat(office.sentence()).isEqualTo("Production office proposed it for €385.00. It waits for approval.");
        return read(office, "(Order \\d+) is proposed\\.");
    }

    /** The limit falls while the office has the order before it. */
    private static void approveAboveTheOfficesLimit(BrowserVisitor office, HttpVisitor administrator, String order) {
        administrator.goTo("Orders");
        administrator.follow("Who may approve how much");
        administrator.fill("Limit of the office, EUR", "300");
        administrator.press("Save");

        office.press("Approve it for €385.00");
        assertThat(office.sentence()).isEqualTo(order + " comes to more than your role may approve.");
        office.goTo("Orders");
        office.follow(order);
        assertThat(office.text())
                .contains("It may be approved by: administrators.")
                .doesNotContain("Approve it");

        administrator.goTo("Orders");
        administrator.follow(order);
        administrator.press("Approve it for €385.00");
        office.reload();
        assertThat(office.sentence()).isEqualTo("Administrator approved it. Next it is placed with Media supplier.");
    }

    private static void placeAndWaitInVain(BrowserVisitor office, String order) {
        office.fill("Ordered on", ORDERED.toString());
        office.fill("Expected on", EXPECTED.toString());
        office.press("It is placed");
        assertThat(office.sentence())
                .isEqualTo("4 items were expected on " + SHORT.format(EXPECTED)
                        + ", and nothing has come: later than the forecast reckons with. Ask for a new date.");
        office.goTo("Orders");
        assertThat(office.text()).contains("late, expected " + SHORT.format(EXPECTED));
        fits(office);

        office.follow(order);
        office.follow("The supplier says another date");
        office.fill("New date of arrival", CAME.toString());
        office.fill("The supplier’s words", "By telephone: the ferry didn’t sail.");
        office.press("Keep the new date");
        assertThat(office.text())
                .contains(
                        order + " is expected on " + LONG.format(CAME) + " now.",
                        "is expected on " + SHORT.format(CAME) + " now. By telephone: the ferry didn’t sail.");
    }

    private static void receiveAPart(BrowserVisitor office, String order) {
        office.follow("Receive what came");
        assertThat(office.sentence()).startsWith("4 items are still to come.");
        office.fill("Date they came", CAME.toString());
        office.choose("Where they are", "Set truck");
        office.fill("Serial numbers", "SD-440178\nSD-440181");
        office.fill("Codes", "SHUTTLE-08");
        office.page()
                .getByText("Something is broken, or isn’t what was ordered")
                .click();
        office.fill("How many are broken", "1");
        office.fill("What is broken", "its case is cracked");
        office.choose("What the supplier does about the broken ones", "The supplier sends others");
        office.fill("When the rest comes", TODAY.toString());
        fits(office);
        office.press("Keep what came");
        assertThat(office.sentence())
                .isEqualTo("2 items came in order on " + LONG.format(CAME) + ", and one that was broken or wrong.");
        assertThat(office.text())
                .contains("SHUTTLE-08 SD-440178", "SHUTTLE-09 SD-440181", "1 broken: its case is cracked");

        office.follow("Print their labels");
        assertThat(office.text()).contains("SHUTTLE-08", "SHUTTLE-09", "Open the PDF to print");
        office.find("SHUTTLE-08");
        assertThat(office.text()).contains("SD-440178");
        office.goTo("Orders");
        office.follow(order);
        assertThat(office.sentence())
                .isEqualTo("2 of 4 items came. The rest is expected on " + SHORT.format(TODAY) + ".");
    }

    private static void receiveTheRestAndClose(BrowserVisitor office, String order) {
        office.follow("Receive what came");
        office.choose("Where they are", "Set truck");
        office.fill("How many without a serial number", "2");
        office.press("Keep what came");
        assertThat(office.text()).contains("SHUTTLE-10", "SHUTTLE-11");
        office.follow(order);
        assertThat(office.sentence()).isEqualTo("All 4 items came. Close the order once its bill is right.");
        office.press("Close the order");
        assertThat(office.sentence()).isEqualTo("All 4 items came, and the order is closed.");
        fits(office);

        APIResponse paper = office.page().request().get(office.address().replaceAll("\\?.*", "") + "/order.pdf");
        assertThat(office.page().locator("main a[href$='/order.pdf']").innerText())
                .isEqualTo("The order as a PDF");
        assertThat(paper.status()).isEqualTo(200);
        assertThat(paper.headers().get("content-type")).startsWith("application/pdf");
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
        fits(office);
    }

    /** What was typed is still there. */
    private static void givesItBack(BrowserVisitor office) {
        office.press("Give them back");
        assertThat(office.text()).contains("SHUTTLE-08 is back with its supplier.");
        String ended = office.text().replaceAll(".*No longer hired", "");
        assertThat(ended).containsPattern("SHUTTLE-08 .*Media supplier " + SHORT.format(TODAY) + " €45.00");
        fits(office);
        office.follow("Costs");
        assertThat(office.sentence())
                .startsWith("Media will have cost about €")
                .contains("and the budget is €45,000.00");
        office.page().locator("main details summary").last().click();
        assertThat(office.text())
                .contains("SHUTTLE-08 Drives, hired Spent SHUTTLE-08 " + SHORT.format(TODAY) + " €45.00");
        fits(office);
    }

    private static void haveAReceiverWithoutAnAccountConfirm(BrowserVisitor office, BrowserVisitor receiver) {
        String shipment = send(office, "SHUTTLE-09 SHUTTLE-10", "Set truck", "Production office");
        office.press("Make a link");
        String link = office.page().locator("#address").innerText();

        receiver.open(link.substring(link.indexOf("/receipt/")));
        assertThat(receiver.sentence()).endsWith("2 items of shipment " + number(shipment) + ".");
        outcome(receiver, "SHUTTLE-09", "arrived as it was sent");
        outcome(receiver, "SHUTTLE-10", "arrived, but its seal or its case is damaged");
        receiver.fill("Your name", "Gate keeper");
        fits(receiver);
        receiver.press("Confirm the arrival");
        assertThat(receiver.sentence())
                .isEqualTo(shipment + ": Gate keeper has confirmed what was found. It is on record.");

        office.follow("I have it");
        assertThat(office.sentence()).isEqualTo("All 2 items have arrived at Production office.");
        assertThat(office.text()).contains("arrived with a damaged seal SHUTTLE-10", "Gate keeper, by a link");
        fits(office);
    }

    /** In the demo roll B041 is cleared: on its tape, on the array and on the day's shuttle it was proven. */
    private static void loseATape(BrowserVisitor office) {
        office.find("B041");
        assertThat(office.sentence()).contains("Clear to erase");
        String tape = read(office, "(TAPE-\\d\\d)");

        String shipment = send(office, tape, "Post house", "Vault");
        office.follow("It is lost");
        assertThat(office.text()).contains("What was on it, and what is left");
        office.fill("How you know", "The carrier’s van was broken into, says its office.");
        office.fill("Type " + number(shipment) + ", the shipment’s number, to confirm", number(shipment));
        office.press("Report it lost");
        assertThat(office.sentence()).isEqualTo("The item is lost on the way to Vault.");
        for (Locator folded :
                office.page().locator("main section.caution summary").all()) {
            folded.click();
        }
        assertThat(office.text()).containsPattern("B041 is still proven on [^.]*ARRAY-1 \\(Production office\\)");
        fits(office);

        await().atMost(SOON).untilAsserted(() -> {
            office.find("B041");
            assertThat(office.text()).contains("Withdrawn, because its proof no longer held");
        });
        assertThat(office.sentence()).doesNotContain("Clear to erase");
    }

    /** A shuttle of the first week went back to set full, and comes once more. */
    private static void postConfirms(BrowserVisitor office, BrowserVisitor post) {
        String shipment = send(office, "SHUTTLE-05", "Set truck", "Post house");
        post.open(DEMO + "/post");
        post.follow("Media at post");
        assertThat(post.text()).containsPattern("SHUTTLE-05 with \\d+ rolls is on its way since");
        post.follow("Confirm shipment " + number(shipment));
        post.tick("Whatever has no choice of its own below has arrived, seals whole");
        post.press("Confirm the arrival");
        assertThat(post.text()).contains("What you found of shipment " + number(shipment) + " is on record.");
        post.open(DEMO + "/post/media");
        assertThat(post.text()).containsPattern("SHUTTLE-05 may be cleared: its \\d+ rolls are proven elsewhere\\.");
        post.follow("SHUTTLE-05");
        assertThat(post.text()).contains(shipment + " with it was confirmed by Post supervisor");
        fits(post);
    }

    private static void mailIsKept(HttpVisitor administrator) {
        administrator.goTo("Mail");
        administrator.follow("Mail of everybody in this production");
        assertThat(administrator.text()).contains("No mail server is set up, so nothing is sent.", "after wrap");
        assertThat(administrator.sentence()).containsPattern("\\d+ mails were written, \\w+ of which wait");
    }

    private static String send(BrowserVisitor office, String items, String from, String to) {
        office.goTo("Orders");
        office.follow("Shipments");
        office.follow("Pack a shipment");
        office.fill("Items", items);
        office.choose("From", from);
        office.choose("To", to);
        office.fill("Carrier", "day courier");
        office.fill("Expected by (Lisbon time)", TODAY.plusDays(1) + "T18:00");
        office.fill("Numbers of the seals", "S-90131");
        office.press("Pack");
        office.follow("Send it");
        office.press("Send it");
        return read(office, "(Shipment \\d+) is on its way\\.");
    }

    private static void outcome(BrowserVisitor receiver, String code, String outcome) {
        receiver.page()
                .getByRole(AriaRole.GROUP, new Page.GetByRoleOptions().setName(code))
                .getByLabel(outcome)
                .check();
    }

    private static String number(String shipment) {
        return shipment.replaceAll("\\D", "");
    }

    private static String read(Visitor visitor, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(visitor.text());
        assertThat(found.find()).as("%s in %s", pattern, visitor.text()).isTrue();
        return found.group(1);
    }

    private static void fits(BrowserVisitor visitor) {
        assertThat(visitor.sidewaysOverflow())
                .as("%s fits the window", visitor.address())
                .isZero();
    }
}
