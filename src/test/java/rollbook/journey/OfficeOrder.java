package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.APIResponse;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** An order from the proposal to the paper, as the office sees it: ordered twelve days ago, late, come in parts. */
final class OfficeOrder {
    private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.UK);
    private static final DateTimeFormatter SHORT = DateTimeFormatter.ofPattern("EEE d MMM uuuu", Locale.UK);

    private final BrowserVisitor office;
    private final LocalDate today;
    private final LocalDate expected;
    private final LocalDate came;
    private String order = "";

    OfficeOrder(BrowserVisitor office, LocalDate today) {
        this.office = office;
        this.today = today;
        this.expected = today.minusDays(6);
        this.came = today.minusDays(5);
    }

    /** Four hired for two weeks at €45.00 a week each, and €25.00 for the delivery. */
    void propose() {
        office.goTo("Orders");
        office.follow("Propose an order");
        office.choose("Item of a catalogue", "Media supplier: shuttle drive");
        office.fill("Items", "4");
        office.fill("Weeks of hire", "2");
        office.choose("For the pool of", "Set shuttle");
        office.press("Propose it");
        assertThat(office.sentence()).isEqualTo("Production office proposed it for €385.00. It waits for approval.");
        order = office.read("(Order \\d+) is proposed\\.");
    }

    /** The limit falls while the office has the order before it. */
    void approveAboveTheOfficesLimit(HttpVisitor administrator) {
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

    void placeAndWaitInVain() {
        office.fill("Ordered on", today.minusDays(12).toString());
        office.fill("Expected on", expected.toString());
        office.press("It is placed");
        assertThat(office.sentence())
                .isEqualTo("4 items were expected on " + SHORT.format(expected)
                        + ", and nothing has come: later than the forecast reckons with. Ask for a new date.");
        office.goTo("Orders");
        assertThat(office.text()).contains("late, expected " + SHORT.format(expected));
        office.fits();

        office.follow(order);
        office.follow("The supplier says another date");
        office.fill("New date of arrival", came.toString());
        office.fill("The supplier’s words", "By telephone: the ferry didn’t sail.");
        office.press("Keep the new date");
        assertThat(office.text())
                .contains(
                        order + " is expected on " + LONG.format(came) + " now.",
                        "is expected on " + SHORT.format(came) + " now. By telephone: the ferry didn’t sail.");
    }

    void receiveAPart() {
        office.follow("Receive what came");
        assertThat(office.sentence()).startsWith("4 items are still to come.");
        office.fill("Date they came", came.toString());
        office.choose("Where they are", "Set truck");
        office.fill("Serial numbers", "SD-440178\nSD-440181");
        office.fill("Codes", "SHUTTLE-08");
        office.page()
                .getByText("Something is broken, or isn’t what was ordered")
                .click();
        office.fill("How many are broken", "1");
        office.fill("What is broken", "its case is cracked");
        office.choose("What the supplier does about the broken ones", "The supplier sends others");
        office.fill("When the rest comes", today.toString());
        office.fits();
        office.press("Keep what came");
        assertThat(office.sentence())
                .isEqualTo("2 items came in order on " + LONG.format(came) + ", and one that was broken or wrong.");
        assertThat(office.text())
                .contains("SHUTTLE-08 SD-440178", "SHUTTLE-09 SD-440181", "1 broken: its case is cracked");

        office.follow("Print their labels");
        assertThat(office.text()).contains("SHUTTLE-08", "SHUTTLE-09", "Open the PDF to print");
        office.find("SHUTTLE-08");
        assertThat(office.text()).contains("SD-440178");
        office.goTo("Orders");
        office.follow(order);
        assertThat(office.sentence())
                .isEqualTo("2 of 4 items came. The rest is expected on " + SHORT.format(today) + ".");
    }

    void receiveTheRestAndClose() {
        office.follow("Receive what came");
        office.choose("Where they are", "Set truck");
        office.fill("How many without a serial number", "2");
        office.press("Keep what came");
        assertThat(office.text()).contains("SHUTTLE-10", "SHUTTLE-11");
        office.follow(order);
        assertThat(office.sentence()).isEqualTo("All 4 items came. Close the order once its bill is right.");
        office.press("Close the order");
        assertThat(office.sentence()).isEqualTo("All 4 items came, and the order is closed.");
        office.fits();

        APIResponse paper = office.page().request().get(office.address().replaceAll("\\?.*", "") + "/order.pdf");
        assertThat(office.page().locator("main a[href$='/order.pdf']").innerText())
                .isEqualTo("The order as a PDF");
        assertThat(paper.status()).isEqualTo(200);
        assertThat(paper.headers().get("content-type")).startsWith("application/pdf");
    }
}
