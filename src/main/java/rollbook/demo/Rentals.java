package rollbook.demo;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import rollbook.hire.AgreementBook;
import rollbook.hire.NewTerms;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItems;
import rollbook.production.Membership;
import rollbook.supplier.Suppliers;

/** On what terms the demo hires: two agreements before the shoot, a drive that is kept longer, an adapter that went back. */
@Component
@Profile("demo")
class Rentals {
    private static final String DRIVE = "SHUTTLE-%02d".formatted(Stock.SHUTTLES);
    private static final String SPARE = "ADAPTER-2";
    private static final long LONGER_CENTS = 4_000;

    private final AgreementBook book;
    private final Suppliers suppliers;
    private final MediaItems items;
    private final Custody custody;
    private @Nullable UUID drives;

    Rentals(AgreementBook book, Suppliers suppliers, MediaItems items, Custody custody) {
        this.book = book;
        this.suppliers = suppliers;
        this.items = items;
        this.custody = custody;
    }

    /** The camera department's things until after the wrap, and a drive for the first weeks. */
    void agree(Membership office, Map<String, UUID> ids, StoryDates dates) {
        LocalDate start = LocalDate.ofInstant(dates.daysBefore(14), dates.zone());
        LocalDate wrapped = dates.dateOfMainDay(StoryDates.MAIN_DAYS).plusDays(4);
        List<UUID> department = Stream.of("CARD-", "READER-", "ADAPTER-")
                .flatMap(prefix -> ids.keySet().stream().filter(code -> code.startsWith(prefix)))
                .map(ids::get)
                .toList();
        book.agree(office, terms(office, "CRH-4471", start, wrapped, 4, 2_000L, department));
        LocalDate tomorrow = dates.workDate().plusDays(1);
        drives = book.agree(office, terms(office, "CRH-4502", start, tomorrow, 1, null, List.of(ids.get(DRIVE))));
    }

    private NewTerms terms(
            Membership office,
            String reference,
            LocalDate start,
            LocalDate due,
            int minimumWeeks,
            @Nullable Long lateDayCents,
            List<UUID> hired) {
        Map<UUID, Long> rates = new LinkedHashMap<>();
        for (UUID item : hired) {
            Long cents = items.get(office.productionId(), item).costMinorUnits();
            rates.put(item, Objects.requireNonNull(cents));
        }
        return new NewTerms(house(office), reference, start, due, minimumWeeks, lateDayCents, "", rates);
    }

    private UUID house(Membership office) {
        return suppliers.list(office.productionId()).stream()
                .filter(supplier -> supplier.name().equalsIgnoreCase(Stock.RENTAL_HOUSE))
                .findFirst()
                .orElseThrow()
                .id();
    }

    /** Yesterday the drive was agreed on for five days more; the adapter that nobody needed went back on day 6. */
    void play(Show show, Timeline timeline, StoryDates dates) {
        Membership office = show.as(Account.OFFICE);
        LocalDate back = dates.dateOfMainDay(6);
        timeline.at(
                dates.at(back, 18, 30),
                () -> custody.giveBackAll(office, List.of(show.item(SPARE)), back, "Return desk, receipt 118"));
        timeline.at(
                dates.at(dates.dateOfMainDay(StoryDates.TODAY - 1), 11, 40),
                () -> book.extend(
                        office,
                        Objects.requireNonNull(drives),
                        dates.workDate().plusDays(6),
                        Map.of(show.item(DRIVE), LONGER_CENTS),
                        "By telephone, at a lower rate.",
                        1));
    }
}
