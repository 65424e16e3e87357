package rollbook.journey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;

/**
 * The main job from an empty portal to a card that is blank again, in steps that a person takes. What a step needs to
 * know it reads off the page.
 */
final class WholeLoop {
    static final String PASSWORD = "a lamp above the water";

    private static final Duration SOON = Duration.ofSeconds(30);
    private final Visitor visitor;

    WholeLoop(Visitor visitor) {
        this.visitor = visitor;
    }

    void setUp(String oneTimeCode) {
        visitor.open("/");
        visitor.fill("One-time code", oneTimeCode);
        visitor.fill("Name", "Wrangler");
        visitor.fill("Sign-in name", "wrangler");
        visitor.fill("New password", PASSWORD);
        visitor.fill("The same password again", PASSWORD);
        visitor.fill("Production code", "TIDE");
        visitor.fill("Production name", "The Tide House");
        visitor.choose("Time zone", "Europe/Lisbon");
        visitor.fill("Currency", "EUR");
        visitor.press("Make the account and the production");
    }

    void signIn() {
        visitor.fill("Sign-in name", "wrangler");
        visitor.fill("Password", PASSWORD);
        visitor.press("Sign in");
        assertThat(visitor.text()).contains("May I hand this card back?");
    }

    /** A unit with a camera, two places, and a copy plan of two drives, both needed to clear. */
    void describeProduction() {
        settings("units/new");
        visitor.fill("Name", "Main");
        visitor.press("Add the unit");
        settings("cameras/new");
        visitor.choose("Unit", "Main");
        visitor.fill("Letter", "A");
        visitor.press("Add the camera");
        place("Set", false);
        place("Vault", true);
        leg("Shuttle", "Set");
        leg("Vault copy", "Vault");
        visitor.goTo("Settings and people");
        assertThat(visitor.text()).contains("Shuttle", "Vault copy", "No card is cleared before this copy is proven.");
    }

    private void settings(String page) {
        visitor.open("/p/TIDE/settings/" + page);
    }

    private void place(String name, boolean offSite) {
        settings("places/new");
        visitor.fill("Name", name);
        if (offSite) {
            visitor.tick("Off-site");
        }
        visitor.press("Save");
    }

    private void leg(String name, String place) {
        settings("legs/new");
        visitor.fill("Name", name);
        visitor.choose("Kind of medium", "Drive");
        visitor.choose("Place", place);
        visitor.tick("Needed before a card is cleared");
        visitor.press("Save");
    }

    void addFormat() {
        visitor.goTo("Formats");
        visitor.follow("Add a format");
        visitor.choose("Kind of coding", "Fixed bytes per frame");
        visitor.press("Show the fields of this kind");
        visitor.fill("Name", "House format");
        visitor.fill("Width, photosites or pixels", "1920");
        visitor.fill("Height, photosites or pixels", "1080");
        visitor.fill("Frame rate, frames a second", "24");
        visitor.fill("Frame, bytes", "1000000");
        visitor.press("Add the format");
        assertThat(visitor.text()).contains("House format").contains("24");
    }

    void enterSchedule() {
        visitor.goTo("Days");
        visitor.follow("Enter a whole schedule");
        visitor.fill("Number of shooting days", "5");
        visitor.fill("Camera A, House format, minutes", "40");
        visitor.press("Enter these days");
        visitor.follow("Day 1");
        visitor.press("Start shooting");
        assertThat(visitor.text()).contains("is being shot");
    }

    void registerMedia() {
        register("CARD-001", "card", "1000", null);
        register("READER-1", "reader", "", null);
        register("SHUTTLE-01", "drive", "4000", "Shuttle");
        register("VAULT-01", "drive", "4000", "Vault copy");
    }

    private void register(String code, String kind, String capacity, String leg) {
        visitor.goTo("Media");
        visitor.follow("Register one");
        visitor.fill("Code", code);
        visitor.choose("Kind", kind);
        visitor.fill("Model", "house model");
        visitor.fill("Capacity, GB", capacity);
        visitor.fill("Reading speed, MB/s", "500");
        visitor.fill("Writing speed, MB/s", "500");
        visitor.choose("Place", "VAULT-01".equals(code) ? "Vault" : "Set");
        if (leg != null) {
            visitor.choose("Leg", leg);
        }
        visitor.press("Register");
        assertThat(visitor.text()).contains(code);
    }

    /** The card goes through the camera and comes out as roll A001, and is offloaded to both drives. */
    void shootAndOffload() {
        visitor.goTo("Rolls");
        visitor.follow("Load a card");
        visitor.fill("Card", "CARD-001");
        visitor.choose("Shooting day", "Day 1");
        visitor.choose("Recording format", "House format");
        visitor.press("Log the loading");
        visitor.find("A001");
        visitor.follow("Pull the card");
        visitor.fill("Recorded minutes", "31:30");
        visitor.press("Log the pull");
        visitor.find("A001");
        visitor.follow("Copy the card");
        visitor.choose("Shuttle", "SHUTTLE-01");
        offload();
    }

    private void offload() {
        visitor.choose("Reader", "READER-1");
        visitor.choose("Vault copy", "VAULT-01");
        visitor.press("Start the offload");
        visitor.fill("Bytes read from the card", "45.36 GB");
        visitor.press("It has finished");
        assertThat(visitor.text()).contains("Measured rate");
    }

    /** Makes the copy on the vault drive again, and leaves the good one alone. */
    void makeVaultCopyAgain() {
        visitor.find("A001");
        visitor.follow("Copy again");
        offload();
    }

    /** @param subject as the page words it: the card itself, or a medium's code */
    void upload(String subject, Path... documents) {
        visitor.goTo("Documents");
        visitor.choose("These documents describe", subject);
        visitor.attach("Files", List.of(documents));
        visitor.press("Send");
        await().atMost(SOON).untilAsserted(() -> assertThat(visitor.text()).contains("Stored, SHA-256"));
    }

    /** Waits until the roll's page says all of this. */
    void rollSays(String... words) {
        visitor.find("A001");
        await().atMost(SOON).untilAsserted(() -> {
            visitor.reload();
            assertThat(visitor.text() + " " + visitor.sentence()).contains(words);
        });
    }

    void clearingIsRefused(String reason) {
        visitor.open(rollAddressOf("clear"));
        assertThat(visitor.text())
                .contains("Erasing can’t be undone", reason)
                .doesNotContain("Type CARD-001 to confirm");
    }

    private String rollAddressOf(String act) {
        visitor.find("A001");
        String address = visitor instanceof HttpVisitor http ? http.address() : ((BrowserVisitor) visitor).address();
        return address.substring(address.indexOf("/p/")) + "/" + act;
    }

    void clearAndErase() {
        visitor.find("CARD-001");
        visitor.follow("Clear CARD-001");
        assertThat(visitor.text()).contains("Erasing can’t be undone", "insurer");
        visitor.fill("Type CARD-001 to confirm", "CARD-002");
        visitor.press("Clear CARD-001");
        assertThat(visitor.text()).contains("That is not the code of this card");
        visitor.fill("Type CARD-001 to confirm", "CARD-001");
        visitor.press("Clear CARD-001");
        assertThat(visitor.sentence()).contains("Clear to erase");
        visitor.follow("Record the erasure");
        visitor.fill("Type CARD-001 to confirm", "card-001");
        visitor.press("Record: CARD-001 is erased");
        visitor.find("CARD-001");
        assertThat(visitor.sentence()).contains("CARD-001 is blank");
    }
}
