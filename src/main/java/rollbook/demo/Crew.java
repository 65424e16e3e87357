package rollbook.demo;

import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rollbook.demo.Paperwork.Sheet;
import rollbook.inventory.MediaItem;
import rollbook.offload.Offloads.Destination;
import rollbook.production.Membership;

/** The people of the show at their work; each verb is one act through the portal's services. */
final class Crew {
    private final Departments departments;
    private final Show show;
    private final Membership wrangler;
    private final Membership office;
    private final Membership post;
    private final Deque<String> smallBlanks = new ArrayDeque<>();
    private final Deque<String> largeBlanks = new ArrayDeque<>();
    private final Map<String, UUID> rollIds = new HashMap<>();
    private final Map<String, String> cards = new HashMap<>();
    private final Map<String, UUID> sessions = new HashMap<>();

    Crew(Departments departments, Show show) {
        this.departments = departments;
        this.show = show;
        this.wrangler = show.as(Account.WRANGLER);
        this.office = show.as(Account.OFFICE);
        this.post = show.as(Account.POST);
        for (int number = 1; number <= Stock.CARDS; number++) {
            putBack("CARD-%03d".formatted(number));
        }
    }

    void startDay(UUID dayId) {
        departments.days().start(office, dayId);
    }

    void wrapDay(UUID dayId) {
        departments.days().wrap(office, dayId);
    }

    /** Takes the card that has been blank the longest. */
    void load(ScriptedRoll roll, UUID dayId) {
        String card = blanks(roll.shot() == Shot.EFFECTS).removeFirst();
        cards.put(roll.code(), card);
        UUID camera = show.cameras().get(roll.camera());
        UUID format = show.formats().get(roll.shot());
        rollIds.put(
                roll.code(), departments.rolls().load(wrangler, roll.code(), camera, dayId, show.item(card), format));
    }

    void pull(ScriptedRoll roll) {
        departments.rolls().pull(wrangler, id(roll), roll.minutes());
    }

    /** @param toMedia codes of the media that are written, each for its own leg */
    void startOffload(ScriptedRoll roll, String reader, @Nullable String adapter, String... toMedia) {
        List<Destination> destinations = Stream.of(toMedia)
                .map(code -> new Destination(show.item(code), show.legs().get(legOf(code))))
                .toList();
        UUID adapterId = adapter == null ? null : show.item(adapter);
        sessions.put(
                roll.code(),
                departments.offloads().start(wrangler, id(roll), show.item(reader), adapterId, destinations));
    }

    void finishOffload(ScriptedRoll roll) {
        departments.offloads().finish(wrangler, session(roll), roll.sizeBytes());
    }

    void abandonOffload(ScriptedRoll roll, String note) {
        departments.offloads().abandon(wrangler, session(roll), note);
    }

    void sendForCards(Sheet sheet) throws IOException {
        read(departments.intake().storeForCards(wrangler, sheet.fileName(), sheet.open()));
    }

    void sendForCopies(Sheet sheet, String medium) throws IOException {
        Membership sender = medium.startsWith("TAPE") ? post : wrangler;
        read(departments.intake().storeForCopies(sender, sheet.fileName(), sheet.open(), show.item(medium)));
    }

    /** Without saying what it describes. */
    void send(Sheet sheet) throws IOException {
        read(departments.intake().store(wrangler, sheet.fileName(), sheet.open()));
    }

    private void read(UUID documentId) throws IOException {
        departments.intake().readNow(show.productionId(), documentId);
    }

    void clear(ScriptedRoll roll) {
        departments.clearances().clear(wrangler, id(roll), cards.get(roll.code()));
    }

    void erase(ScriptedRoll roll) {
        String card = cards.get(roll.code());
        departments.clearances().recordErasure(wrangler, id(roll), card);
        putBack(card);
    }

    void askToClearWithoutProof(ScriptedRoll roll, String reason) {
        departments.overrides().request(wrangler, id(roll), reason);
    }

    void send(String item, String place, String holder, String note) {
        move(wrangler, item, place, holder, note);
    }

    /** Seals a box, and gives it to the carrier. */
    void ship(String item, String place, String carrier, Instant expectedBy, String note) {
        departments.shipping().send(wrangler, show.item(item), show.places().get(place), carrier, expectedBy, note);
    }

    /** The post house opens the box. */
    void confirmArrival(String item) {
        departments.shipping().confirm(post, show.item(item));
    }

    void bringBack(String item, String place) {
        move(post, item, place, "", "");
    }

    private void move(Membership by, String code, String place, String holder, String note) {
        MediaItem item = departments.items().get(show.productionId(), show.item(code));
        departments.custody().move(by, item.id(), show.places().get(place), holder, note, item.version());
    }

    void quarantine(String card, String reason) {
        departments.custody().quarantine(wrangler, show.item(card), reason);
        blanks(isLarge(card)).remove(card);
    }

    void order(Purchasing.Wanted wanted, LocalDate on, LocalDate expectedOn) {
        departments.purchasing().order(office, wanted, on, expectedOn);
    }

    void orderReaders(LocalDate on, LocalDate expectedOn) {
        departments.arrivals().orderReaders(office, on, expectedOn);
    }

    void receiveOneBroken(String place, LocalDate cameOn, LocalDate restExpectedOn) {
        departments.arrivals().oneIsBroken(office, show.places().get(place), cameOn, restExpectedOn);
    }

    void askFor(Purchasing.Wanted wanted) {
        departments.purchasing().propose(wrangler, wanted);
    }

    void askForAndDecline(Purchasing.Wanted wanted, String reason) {
        departments.purchasing().decline(office, departments.purchasing().propose(post, wanted), reason);
    }

    /** @param figures by the names under which the form sends them */
    UUID playThrough(String name, UUID dayId, Map<String, String> figures) {
        return departments.scenarios().save(wrangler, name, dayId, figures);
    }

    void proposeOrder(UUID scenarioId) {
        departments.proposals().propose(wrangler, scenarioId);
    }

    void forecast() {
        departments.forecasts().compute(show.productionId());
    }

    /** Everybody has the address that they are known at. */
    void giveAddresses() {
        show.people()
                .forEach((account, person) -> departments
                        .recipients()
                        .keepKnown(person, account.signInName() + "@tide-clerk.example", Show.ZONE));
    }

    void writeMail() {
        departments.mailings().write(show.productionId());
    }

    private UUID id(ScriptedRoll roll) {
        return rollIds.get(roll.code());
    }

    private UUID session(ScriptedRoll roll) {
        return sessions.get(roll.code());
    }

    private void putBack(String card) {
        blanks(isLarge(card)).addLast(card);
    }

    private Deque<String> blanks(boolean large) {
        return large ? largeBlanks : smallBlanks;
    }

    private static boolean isLarge(String card) {
        return Integer.parseInt(card.substring("CARD-".length())) > Stock.SMALL_CARDS;
    }

    private static String legOf(String medium) {
        return medium.startsWith("SHUTTLE") ? Stock.SHUTTLE : medium.startsWith("ARRAY") ? Stock.ARRAY : Stock.TAPE;
    }
}
