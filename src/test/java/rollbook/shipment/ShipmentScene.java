package rollbook.shipment;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.offload.Offloads;
import rollbook.offload.Offloads.Destination;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.TestProduction;
import rollbook.verification.ManifestIntake;

/** A production with a set, a post house that is off-site, two drives and a tape, and rolls that are copied and proven. */
final class ShipmentScene {
    private static final String DIGEST = "0cc175b9c0f1b6a831c399e269772661";

    final TestProduction production;
    final Membership wrangler;
    final Membership post;
    final UUID set;
    final UUID postHouse;
    final UUID shuttle;
    final UUID array;
    final UUID tape;
    private final UUID camera;
    private final UUID day;
    private final UUID format;
    private final UUID reader;
    private final Rolls rolls;
    private final Offloads offloads;
    private final ManifestIntake intake;
    private final MediaItems items;
    private final Jobs jobs;
    private final Map<String, UUID> cards = new HashMap<>();
    private int documents;

    ShipmentScene(
            Fixtures fixtures, Rolls rolls, Offloads offloads, ManifestIntake intake, MediaItems items, Jobs jobs) {
        this.rolls = rolls;
        this.offloads = offloads;
        this.intake = intake;
        this.items = items;
        this.jobs = jobs;
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        post = production.as(Role.POST);
        set = production.place("Set", false);
        postHouse = production.place("Post house", true);
        UUID unit = production.unit("Main");
        camera = production.camera(unit, "A");
        day = production.day(unit, 1, "SHOOTING");
        format = production.format("F");
        reader = production.item("READER-1", "READER", set, null);
        shuttle = production.item("SHUTTLE-1", "DRIVE", set, null);
        array = production.item("ARRAY-1", "DRIVE", set, null);
        tape = production.item("TAPE-1", "TAPE", set, null);
    }

    /** A roll on its own card that is copied to some media, nothing of it proven. */
    UUID copied(String code, UUID... media) {
        UUID card = production.item("CARD-" + code, "CARD", set, null);
        cards.put(code, card);
        UUID roll = rolls.load(wrangler, code, camera, day, card, format);
        rolls.pull(wrangler, roll, BigDecimal.TEN);
        List<Destination> to = new ArrayList<>();
        for (UUID medium : media) {
            to.add(new Destination(medium, null));
        }
        UUID session = offloads.start(wrangler, roll, reader, null, to);
        offloads.finish(wrangler, session, 1_000_000L);
        return roll;
    }

    /** The same, and every copy proven against the card. */
    UUID proven(String code, UUID... media) throws IOException {
        UUID roll = copied(code, media);
        list(code, null);
        for (UUID medium : media) {
            list(code, medium);
        }
        jobs.run();
        return roll;
    }

    /** Sends a list of the roll's files on a medium, or on its card for null. */
    void list(String code, @Nullable UUID medium) throws IOException {
        String text = "# reading %d\n%s  %s/one.mxf\n".formatted(++documents, DIGEST, code);
        ByteArrayInputStream bytes = new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
        String name = code + "-" + documents + ".md5";
        if (medium == null) {
            intake.storeForCards(wrangler, name, bytes);
        } else {
            intake.storeForCopies(wrangler, name, bytes, medium);
        }
    }

    UUID cardOf(String code) {
        return cards.get(code);
    }

    MediaItem item(UUID id) {
        return items.get(production.id, id);
    }

    List<MediaItem> items(UUID... ids) {
        List<MediaItem> list = new ArrayList<>();
        for (UUID id : ids) {
            list.add(item(id));
        }
        list.sort(Comparator.comparing(MediaItem::code));
        return list;
    }

    ShipmentDetails toPost(String carrier) {
        return new ShipmentDetails(set, postHouse, "", carrier, "S-1\nS-2", 2_300L, "", null);
    }

    static Instant tomorrow() {
        return Instant.now().plus(1, ChronoUnit.DAYS).truncatedTo(ChronoUnit.SECONDS);
    }
}
