package rollbook.demo;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import rollbook.inventory.Inventory;
import rollbook.inventory.ItemDetails;
import rollbook.inventory.NewItem;
import rollbook.inventory.NumberRun;
import rollbook.inventory.Ownership;
import rollbook.production.MediaKind;
import rollbook.production.Membership;

/** Registers the demo's media items. Models, suppliers and prices are invented. */
@Component
@Profile("demo")
class Stock {
    static final String SET = "Set truck";
    static final String OFFICE = "Production office";
    static final String POST = "Post house";
    static final String VAULT = "Vault";

    static final String SHUTTLE = "Set shuttle";
    static final String ARRAY = "Office array";
    static final String TAPE = "Vault tape";

    static final long TB = 1_000_000_000_000L;
    private static final long MB = 1_000_000L;
    static final int SMALL_CARDS = 16;
    static final int CARDS = 24;
    static final int SHUTTLES = 7;
    static final int TAPES = 8;
    static final long SHUTTLE_BYTES = 12 * TB;
    static final long TAPE_BYTES = 18 * TB;
    static final long ARRAY_BYTES = 108 * TB;
    static final int SHUTTLE_PRICE_CENTS = 61_500;
    static final int TAPE_PRICE_CENTS = 9_400;
    static final int ARRAY_PRICE_CENTS = 1_480_000;

    /** What holds a session back: the slowest thing that the bytes pass. */
    static final long SHUTTLE_BYTES_PER_SECOND = 480 * MB;

    static final long ADAPTER_BYTES_PER_SECOND = 420 * MB;
    static final long ARRAY_BYTES_PER_SECOND = 900 * MB;

    static final String RENTAL_HOUSE = "camera rental house";
    private static final String MEDIA_SUPPLIER = "media supplier";

    private final Inventory inventory;

    Stock(Inventory inventory) {
        this.inventory = inventory;
    }

    /** Registers all items and returns their ids by their codes. */
    Map<String, UUID> register(Membership office, Map<String, UUID> places, Map<String, UUID> legs, StoryDates dates) {
        Map<String, UUID> ids = new LinkedHashMap<>();
        LocalDate wrapped = dates.dateOfMainDay(StoryDates.MAIN_DAYS).plusDays(4);
        Like hired = new Like(office, places.get(SET), RENTAL_HOUSE, wrapped, null);
        ids.putAll(hired.run(
                MediaKind.CARD,
                new NumberRun("CARD-", 1, 3, SMALL_CARDS),
                "camera card, 1 TB",
                new Figures(TB, 1_100 * MB, 900 * MB, 14_000)));
        ids.putAll(hired.run(
                MediaKind.CARD,
                new NumberRun("CARD-", SMALL_CARDS + 1, 3, CARDS - SMALL_CARDS),
                "camera card, 2 TB",
                new Figures(2 * TB, 1_400 * MB, 1_200 * MB, 24_000)));
        ids.putAll(hired.run(
                MediaKind.READER,
                new NumberRun("READER-", 1, 1, 3),
                "card reader, one slot",
                new Figures(null, 1_000 * MB, null, 6_000)));
        ids.putAll(hired.run(
                MediaKind.ADAPTER,
                new NumberRun("ADAPTER-", 1, 1, 2),
                "5 Gb/s link adapter",
                new Figures(null, ADAPTER_BYTES_PER_SECOND, null, 1_500)));
        Figures shuttle = new Figures(SHUTTLE_BYTES, 520 * MB, SHUTTLE_BYTES_PER_SECOND, SHUTTLE_PRICE_CENTS);
        Like own = new Like(office, places.get(SET), MEDIA_SUPPLIER, null, legs.get(SHUTTLE));
        ids.putAll(own.run(MediaKind.DRIVE, new NumberRun("SHUTTLE-", 1, 2, SHUTTLES - 1), "shuttle drive", shuttle));
        ids.putAll(
                new Like(office, places.get(SET), RENTAL_HOUSE, dates.workDate().plusDays(6), legs.get(SHUTTLE))
                        .run(
                                MediaKind.DRIVE,
                                new NumberRun("SHUTTLE-", SHUTTLES, 2, 1),
                                "shuttle drive",
                                new Figures(SHUTTLE_BYTES, 520 * MB, SHUTTLE_BYTES_PER_SECOND, 4_500)));
        ids.putAll(new Like(office, places.get(OFFICE), MEDIA_SUPPLIER, null, legs.get(ARRAY))
                .run(
                        MediaKind.ARRAY,
                        new NumberRun("ARRAY-", 1, 1, 2),
                        "disk array, two spare disks",
                        new Figures(ARRAY_BYTES, 1_000 * MB, ARRAY_BYTES_PER_SECOND, ARRAY_PRICE_CENTS)));
        ids.putAll(new Like(office, places.get(POST), MEDIA_SUPPLIER, null, legs.get(TAPE))
                .run(
                        MediaKind.TAPE,
                        new NumberRun("TAPE-", 1, 2, TAPES),
                        "tape, 18 TB",
                        new Figures(TAPE_BYTES, 380 * MB, 380 * MB, TAPE_PRICE_CENTS)));
        return ids;
    }

    /** @param cents price if bought, price per week if hired */
    private record Figures(
            @Nullable Long capacityBytes,
            @Nullable Long readBytesPerSecond,
            @Nullable Long writeBytesPerSecond,
            long cents) {}

    /** What items of one delivery have in common; hired if there is a day until which. */
    private final class Like {
        private final Membership office;
        private final UUID place;
        private final String supplier;
        private final @Nullable LocalDate hiredUntil;
        private final @Nullable UUID leg;

        Like(Membership office, UUID place, String supplier, @Nullable LocalDate hiredUntil, @Nullable UUID leg) {
            this.office = office;
            this.place = place;
            this.supplier = supplier;
            this.hiredUntil = hiredUntil;
            this.leg = leg;
        }

        Map<String, UUID> run(MediaKind kind, NumberRun run, String model, Figures figures) {
            ItemDetails details = new ItemDetails(
                    run.prefix(),
                    "",
                    model,
                    figures.capacityBytes(),
                    figures.readBytesPerSecond(),
                    figures.writeBytesPerSecond(),
                    hiredUntil == null ? Ownership.BOUGHT : Ownership.HIRED,
                    supplier,
                    figures.cents(),
                    hiredUntil,
                    leg);
            List<UUID> ids = inventory.registerRun(office, new NewItem(kind, details, place, ""), run);
            Map<String, UUID> byCode = new LinkedHashMap<>();
            List<String> codes = new ArrayList<>(run.codes());
            for (int i = 0; i < ids.size(); i++) {
                byCode.put(codes.get(i), ids.get(i));
            }
            return byCode;
        }
    }
}
