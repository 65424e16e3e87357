package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.time.Duration;
import java.time.LocalDate;

/** Boxes that the office sends: one is confirmed without an account, one is lost, one is confirmed by post. */
final class OfficeShipments {
    private static final Duration SOON = Duration.ofSeconds(30);

    private final BrowserVisitor office;
    private final LocalDate today;

    OfficeShipments(BrowserVisitor office, LocalDate today) {
        this.office = office;
        this.today = today;
    }

    void haveAReceiverWithoutAnAccountConfirm(BrowserVisitor receiver) {
        String shipment = send("SHUTTLE-09 SHUTTLE-10", "Set truck", "Production office");
        office.press("Make a link");
        String link = office.page().locator("#address").innerText();

        receiver.open(link.substring(link.indexOf("/receipt/")));
        assertThat(receiver.sentence()).endsWith("2 items of shipment " + number(shipment) + ".");
        outcome(receiver, "SHUTTLE-09", "arrived as it was sent");
        outcome(receiver, "SHUTTLE-10", "arrived, but its seal or its case is damaged");
        receiver.fill("Your name", "Gate keeper");
        receiver.fits();
        receiver.press("Confirm the arrival");
        assertThat(receiver.sentence())
                .isEqualTo(shipment + ": Gate keeper has confirmed what was found. It is on record.");

        office.follow("I have it");
        assertThat(office.sentence()).isEqualTo("All 2 items have arrived at Production office.");
        assertThat(office.text()).contains("arrived with a damaged seal SHUTTLE-10", "Gate keeper, by a link");
        office.fits();
    }

    /** In the demo roll B041 is cleared: on its tape, on the array and on the day's shuttle it was proven. */
    void loseATape() {
        office.find("B041");
        assertThat(office.sentence()).contains("Clear to erase");
        String tape = office.read("(TAPE-\\d\\d)");

        String shipment = send(tape, "Post house", "Vault");
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
        office.fits();

        await().atMost(SOON).untilAsserted(() -> {
            office.find("B041");
            assertThat(office.text()).contains("Withdrawn, because its proof no longer held");
        });
        assertThat(office.sentence()).doesNotContain("Clear to erase");
    }

    /** A shuttle of the first week went back to set full, and comes once more. */
    void postConfirms(BrowserVisitor post) {
        String shipment = send("SHUTTLE-05", "Set truck", "Post house");
        post.open("/p/TIDECLERK/post");
        post.follow("Media at post");
        assertThat(post.text()).containsPattern("SHUTTLE-05 with \\d+ rolls is on its way since");
        post.follow("Confirm shipment " + number(shipment));
        post.tick("Whatever has no choice of its own below has arrived, seals whole");
        post.press("Confirm the arrival");
        assertThat(post.text()).contains("What you found of shipment " + number(shipment) + " is on record.");
        post.open("/p/TIDECLERK/post/media");
        assertThat(post.text()).containsPattern("SHUTTLE-05 may be cleared: its \\d+ rolls are proven elsewhere\\.");
        post.follow("SHUTTLE-05");
        assertThat(post.text()).contains(shipment + " with it was confirmed by Post supervisor");
        post.fits();
    }

    private String send(String items, String from, String to) {
        office.goTo("Orders");
        office.follow("Shipments");
        office.follow("Pack a shipment");
        office.fill("Items", items);
        office.choose("From", from);
        office.choose("To", to);
        office.fill("Carrier", "day courier");
        office.fill("Expected by (Lisbon time)", today.plusDays(1) + "T18:00");
        office.fill("Numbers of the seals", "S-90131");
        office.press("Pack");
        office.follow("Send it");
        office.press("Send it");
        return office.read("(Shipment \\d+) is on its way\\.");
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
}
