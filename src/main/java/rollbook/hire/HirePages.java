package rollbook.hire;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import rollbook.hire.HireHolds.OnItem;
import rollbook.label.CodeList;
import rollbook.production.Membership;
import rollbook.web.Display;
import rollbook.web.Listing;
import rollbook.web.Paged;

/** Gathers what the pages about hires show. */
@Component
class HirePages {
    private final Hires hires;
    private final HireHolds holds;
    private final HireReminders reminders;
    private final HireListing listing;
    private final HireWords words;
    private final Display display;
    private final Clock clock;

    HirePages(
            Hires hires,
            HireHolds holds,
            HireReminders reminders,
            HireListing listing,
            HireWords words,
            Display display,
            Clock clock) {
        this.listing = listing;
        this.hires = hires;
        this.holds = holds;
        this.reminders = reminders;
        this.words = words;
        this.display = display;
        this.clock = clock;
    }

    /**
     * Items of one agreement that are due on one day; without an agreement, of one supplier.
     *
     * @param agreementId null if nobody wrote it down
     * @param first one of the items
     * @param due when, and how far away that is
     * @param lateSoFar what being late has cost until today; empty if nothing
     * @param holds what is on them
     */
    record Row(
            @Nullable UUID agreementId,
            String agreement,
            UUID first,
            String codes,
            String what,
            String supplier,
            String due,
            boolean overdue,
            boolean soon,
            String untilDue,
            String weekLate,
            String lateSoFar,
            List<String> holds) {}

    /** What went back. */
    record EndedRow(Hired hired, HireEnd end, String cost, String late) {}

    /**
     * @param all how many items are hired or were
     * @param found how many of them the address asks for
     * @param anyHere whether any item is to go back, shown or not
     */
    record ListPage(
            String sentence,
            Listing list,
            int all,
            int found,
            boolean anyHere,
            List<Row> rows,
            boolean agreementMissing,
            Paged<EndedRow> ended,
            String endedTotal,
            int remindDays) {}

    ListPage list(Membership membership, Map<String, String> address) {
        LocalDate today = today(membership);
        Currency currency = currency(membership);
        List<Hired> all = hires.all(membership.productionId(), membership.zone());
        HireListing.Asked asked = listing.read(membership.path("hire"), address, all);
        List<Hired> shown = all.stream().filter(asked::isFor).toList();
        List<Hired> here = all.stream().filter(Hired::isHere).toList();
        Map<UUID, OnItem> onItems = holds.of(membership, here);
        HireReminders.Reminder reminder = reminders.of(membership.productionId());
        List<EndedRow> ended = ended(shown, currency);
        return new ListPage(
                words.sentence(here, today, currency),
                asked.listing(),
                all.size(),
                shown.size(),
                !here.isEmpty(),
                groups(shown.stream().filter(Hired::isHere).toList()).stream()
                        .sorted(asked.groups())
                        .map(group -> row(group, today, reminder.days(), currency, onItems))
                        .toList(),
                here.stream().anyMatch(hired -> hired.agreement() == null),
                Paged.of(ended, asked.listing().page()),
                words.money(
                        ended.stream()
                                .map(EndedRow::end)
                                .mapToLong(HireEnd::totalMinorUnits)
                                .reduce(0, Math::addExact),
                        currency),
                reminder.days());
    }

    /** Those of an agreement, or without one of a supplier, that are due together; the first due first. */
    static List<List<Hired>> groups(List<Hired> here) {
        return here.stream()
                .collect(Collectors.groupingBy(
                        hired -> List.of(hired.agreementCode(), hired.supplier(), Objects.toString(hired.dueOn(), "")),
                        LinkedHashMap::new,
                        Collectors.toList()))
                .values()
                .stream()
                .sorted(Comparator.comparing(
                                (List<Hired> group) -> group.get(0).dueOn(),
                                Comparator.nullsLast(Comparator.naturalOrder()))
                        .thenComparing(group -> group.get(0).supplier())
                        .thenComparing(group -> group.get(0).item().code()))
                .toList();
    }

    private Row row(List<Hired> group, LocalDate today, int remindDays, Currency currency, Map<UUID, OnItem> onItems) {
        Hired first = group.get(0);
        HireAgreement agreement = first.agreement();
        long late = words.lateMinorUnits(group, today);
        return new Row(
                agreement == null ? null : agreement.id(),
                first.agreementCode(),
                first.item().id(),
                words.codes(group),
                words.what(group),
                first.supplier(),
                words.due(first.dueOn(), today),
                first.isOverdue(today),
                first.isDueWithin(remindDays, today),
                words.untilDue(group, today, currency),
                words.weekLate(group, currency),
                late == 0 ? "" : display.text("hire.late.so-far", words.money(late, currency)),
                onItems(group, onItems));
    }

    /** Cards together, media one by one: what keeps them first. */
    private List<String> onItems(List<Hired> group, Map<UUID, OnItem> onItems) {
        List<String> cards = new ArrayList<>();
        List<String> keeping = new ArrayList<>();
        List<String> proven = new ArrayList<>();
        for (Hired hired : group) {
            OnItem onItem = onItems.get(hired.item().id());
            if (hired.item().mayHoldRoll()) {
                cards.add(hired.item().code());
            } else if (onItem != null && !onItem.text().isEmpty()) {
                (onItem.keeps() ? keeping : proven)
                        .add(display.text("hire.return.item-says", onItem.code(), onItem.text()));
            }
        }
        if (!cards.isEmpty()) {
            keeping.add(display.text("hire.holds.cards", CodeList.write(cards), cards.size()));
        }
        keeping.addAll(proven);
        return keeping;
    }

    /** The last one first. */
    private List<EndedRow> ended(List<Hired> all, Currency currency) {
        return all.stream()
                .filter(hired -> hired.end() != null)
                .map(hired -> ended(hired, Objects.requireNonNull(hired.end()), currency))
                .sorted(Comparator.comparing((EndedRow row) -> row.end().endedOn())
                        .reversed()
                        .thenComparing(row -> row.hired().item().code()))
                .toList();
    }

    private EndedRow ended(Hired hired, HireEnd end, Currency currency) {
        String late = end.lateMinorUnits() == 0
                ? ""
                : display.text("hire.ended.late", words.money(end.lateMinorUnits(), currency));
        return new EndedRow(hired, end, words.money(end.totalMinorUnits(), currency), late);
    }

    /** An item of an agreement. */
    record ItemRow(
            Hired hired,
            String week,
            String due,
            String cost,
            String weekLate,
            @Nullable OnItem onItem) {}

    /** @param corrected whether a later entry stands in its place or took it back */
    record EntryRow(TermsEntry entry, String text, String items, boolean corrected) {}

    record AgreementPage(
            HireAgreement agreement,
            String sentence,
            String late,
            String accrued,
            String untilDue,
            List<ItemRow> items,
            List<EntryRow> history,
            boolean anyHere) {}

    AgreementPage agreement(Membership membership, HireAgreement agreement) {
        LocalDate today = today(membership);
        Currency currency = currency(membership);
        List<Hired> all = hires.all(membership.productionId(), membership.zone());
        List<Hired> under = under(all, agreement.id());
        List<Hired> here = under.stream().filter(Hired::isHere).toList();
        Map<UUID, OnItem> onItems = holds.of(membership, here);
        List<TermsEntry> inForce = agreement.terms().inForce();
        return new AgreementPage(
                agreement,
                agreement.terms().isWithdrawn()
                        ? display.text("hire.one.withdrawn", agreement.code())
                        : words.sentence(here, today, currency),
                words.late(agreement.terms().newest(), currency),
                words.ifReturnedOn(today, here, currency),
                words.untilDue(here, today, currency),
                under.stream()
                        .map(hired -> item(
                                hired, today, currency, onItems.get(hired.item().id())))
                        .toList(),
                agreement.history().stream()
                        .map(entry -> new EntryRow(
                                entry,
                                words.entry(entry, currency),
                                rates(entry, all, currency),
                                entry.act() != TermsEntry.Act.TAKEN_BACK && !inForce.contains(entry)))
                        .toList(),
                !here.isEmpty());
    }

    private ItemRow item(Hired hired, LocalDate today, Currency currency, @Nullable OnItem onItem) {
        List<Hired> alone = List.of(hired);
        HireEnd end = hired.end();
        return new ItemRow(
                hired,
                hired.weekMinorUnits() == null
                        ? display.text("hire.cost.unknown")
                        : words.money(hired.weekMinorUnits(), currency),
                words.due(hired.dueOn(), today),
                end == null ? words.untilDue(alone, today, currency) : words.money(end.totalMinorUnits(), currency),
                hired.isHere() ? words.weekLate(alone, currency) : "",
                onItem);
    }

    /** CARD-001 to CARD-016 at €140.00. */
    private String rates(TermsEntry entry, List<Hired> all, Currency currency) {
        Map<Long, List<String>> codesByRate = new LinkedHashMap<>();
        all.stream()
                .map(Hired::item)
                .filter(item -> entry.weekMinorUnits().containsKey(item.id()))
                .forEach(item -> codesByRate
                        .computeIfAbsent(entry.weekMinorUnits().get(item.id()), any -> new ArrayList<>())
                        .add(item.code()));
        return codesByRate.entrySet().stream()
                .map(rate -> display.text(
                        "hire.entry.rate", CodeList.write(rate.getValue()), words.money(rate.getKey(), currency)))
                .collect(Collectors.joining("; "));
    }

    static List<Hired> under(List<Hired> all, UUID agreementId) {
        return all.stream()
                .filter(hired -> agreementId.equals(hired.item().agreementId()))
                .toList();
    }

    LocalDate today(Membership membership) {
        return LocalDate.ofInstant(clock.instant(), membership.zone());
    }

    static Currency currency(Membership membership) {
        return Currency.getInstance(membership.currency());
    }
}
