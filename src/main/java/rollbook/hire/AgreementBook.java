package rollbook.hire;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.hire.TermsEntry.Act;
import rollbook.inventory.HiredAs;
import rollbook.inventory.Inventory;
import rollbook.inventory.MediaItem;
import rollbook.inventory.MediaItems;
import rollbook.inventory.Ownership;
import rollbook.inventory.TermsKeeper;
import rollbook.production.Membership;
import rollbook.supplier.Suppliers;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/**
 * Writes down what is agreed with suppliers. What an agreement says of its items is written to the inventory with it, and
 * what ended under it is reckoned anew.
 */
@Service
public class AgreementBook implements TermsKeeper {
    private final AgreementRows rows;
    private final Agreements agreements;
    private final HireEnds ends;
    private final Hires hires;
    private final MediaItems items;
    private final Inventory inventory;
    private final Suppliers suppliers;
    private final AuditTrail trail;

    AgreementBook(
            AgreementRows rows,
            Agreements agreements,
            HireEnds ends,
            Hires hires,
            MediaItems items,
            Inventory inventory,
            Suppliers suppliers,
            AuditTrail trail) {
        this.rows = rows;
        this.agreements = agreements;
        this.ends = ends;
        this.hires = hires;
        this.items = items;
        this.inventory = inventory;
        this.suppliers = suppliers;
        this.trail = trail;
    }

    @Override
    public Optional<String> agreementOf(UUID productionId, UUID itemId) {
        return Optional.ofNullable(
                agreements.codes(productionId, List.of(itemId)).get(itemId));
    }

    /**
     * @throws Refusal if an item is bought, has left, or is hired under another agreement
     * @throws NotFoundException if this production has no such supplier or item
     */
    @Transactional
    public UUID agree(Membership by, NewTerms terms) {
        requireHere(
                lockItems(by, terms.weekMinorUnits().keySet()),
                terms.weekMinorUnits().keySet());
        UUID id = UUID.randomUUID();
        rows.add(by.productionId(), id);
        rows.join(id, terms.weekMinorUnits().keySet());
        enter(by, id, 1, Act.AGREED, terms);
        told(by, id, "hire.agreed");
        return id;
    }

    /**
     * Keeps items longer. The others of the agreement stay due when they are.
     *
     * @param weekMinorUnits for weeks that begin after the former due date, of each item that is kept longer
     * @param seen how many entries the person has seen
     * @throws Refusal if an item has left or isn't due before that, or somebody else changed the agreement meanwhile
     */
    @Transactional
    public void extend(
            Membership by, UUID agreementId, LocalDate dueOn, Map<UUID, Long> weekMinorUnits, String note, int seen) {
        HireAgreement agreement = lock(by, agreementId, seen);
        requireInForce(agreement);
        Map<UUID, MediaItem> locked = lockItems(by, union(agreement, weekMinorUnits.keySet()));
        requireHere(locked, weekMinorUnits.keySet());
        for (UUID item : weekMinorUnits.keySet()) {
            HireTerms terms = agreement.terms().of(item).orElseThrow(NotFoundException::new);
            if (!dueOn.isAfter(terms.dueOn())) {
                throw new Refusal(
                        "hire.refused.not-longer",
                        locked.get(item).code(),
                        terms.dueOn().toString());
            }
        }
        TermsEntry newest = agreement.terms().newest();
        enter(
                by,
                agreementId,
                seen + 1,
                Act.EXTENDED,
                new NewTerms(
                        newest.supplierId(),
                        newest.reference(),
                        newest.startedOn(),
                        dueOn,
                        newest.minimumWeeks(),
                        newest.lateDayMinorUnits(),
                        note,
                        weekMinorUnits));
        told(by, agreementId, "hire.extended");
    }

    /**
     * Says anew what was agreed, or how it was extended last. Items that have ended under it stay in it.
     *
     * @throws Refusal as {@link #agree} and {@link #extend}
     */
    @Transactional
    public void correct(Membership by, UUID agreementId, NewTerms terms, int seen) {
        HireAgreement agreement = lock(by, agreementId, seen);
        requireInForce(agreement);
        TermsEntry newest = agreement.terms().newest();
        Set<UUID> named = terms.weekMinorUnits().keySet();
        Set<UUID> coming = without(named, newest.weekMinorUnits().keySet());
        Set<UUID> going = without(newest.weekMinorUnits().keySet(), named);
        requireHere(lockItems(by, union(agreement, named)), coming);
        requireNoneEnded(by, going);
        if (agreement.terms().extensions() == 0) {
            rows.leave(agreementId, going);
            rows.join(agreementId, coming);
        } else {
            TermsEntry before = agreement.terms().beforeNewest().orElseThrow();
            if (!terms.dueOn().isAfter(before.dueOn())) {
                throw new Refusal(
                        "hire.refused.not-longer",
                        agreement.code(),
                        before.dueOn().toString());
            }
            if (coming.stream().anyMatch(item -> agreement.terms().of(item).isEmpty())) {
                throw new NotFoundException();
            }
        }
        enter(by, agreementId, seen + 1, Act.CORRECTED, terms);
        told(by, agreementId, "hire.corrected");
    }

    /**
     * Takes the newest entry in force back: an extension, or the agreement itself. Without an agreement its items are as the
     * inventory has them.
     *
     * @throws Refusal if items have ended under it, or somebody else changed the agreement meanwhile
     */
    @Transactional
    public void takeBack(Membership by, UUID agreementId, String note, int seen) {
        HireAgreement agreement = lock(by, agreementId, seen);
        requireInForce(agreement);
        TermsEntry newest = agreement.terms().newest();
        Set<UUID> named = newest.weekMinorUnits().keySet();
        lockItems(by, union(agreement, named));
        if (agreement.terms().extensions() == 0) {
            requireNoneEnded(by, named);
            rows.leave(agreementId, named);
        }
        enter(
                by,
                agreementId,
                seen + 1,
                Act.TAKEN_BACK,
                new NewTerms(
                        newest.supplierId(),
                        newest.reference(),
                        newest.startedOn(),
                        newest.dueOn(),
                        newest.minimumWeeks(),
                        newest.lateDayMinorUnits(),
                        note,
                        Map.of()));
        told(by, agreementId, "hire.taken-back");
    }

    private HireAgreement lock(Membership by, UUID agreementId, int seen) {
        rows.lock(by.productionId(), agreementId);
        HireAgreement agreement = agreements.get(by.productionId(), agreementId);
        if (agreement.entries() != seen) {
            throw new Refusal("hire.refused.changed", agreement.code());
        }
        return agreement;
    }

    /** In the order of their codes, as everybody does; before the ends are read, so that none leaves meanwhile. */
    private Map<UUID, MediaItem> lockItems(Membership by, Set<UUID> itemIds) {
        Map<UUID, MediaItem> locked = new LinkedHashMap<>();
        itemIds.stream()
                .map(id -> items.get(by.productionId(), id))
                .sorted(Comparator.comparing(MediaItem::code))
                .forEach(item -> locked.put(item.id(), items.lock(by.productionId(), item.id())));
        return locked;
    }

    private static Set<UUID> union(HireAgreement agreement, Set<UUID> named) {
        Set<UUID> all = new HashSet<>(named);
        agreement
                .terms()
                .inForce()
                .forEach(entry -> all.addAll(entry.weekMinorUnits().keySet()));
        return all;
    }

    private static void requireHere(Map<UUID, MediaItem> locked, Set<UUID> these) {
        these.stream().map(locked::get).forEach(AgreementBook::requireHired);
    }

    private static void requireHired(MediaItem item) {
        if (item.ownership() != Ownership.HIRED) {
            throw new Refusal("hire.refused.bought", item.code());
        }
        switch (item.condition()) {
            case GOOD, QUARANTINED, LOST -> {}
            case RETURNED, RETIRED -> throw new Refusal("hire.refused.left", item.code());
        }
    }

    private void requireInForce(HireAgreement agreement) {
        if (agreement.terms().isWithdrawn()) {
            throw new Refusal("hire.refused.withdrawn", agreement.code());
        }
    }

    private void requireNoneEnded(Membership by, Set<UUID> itemIds) {
        Set<UUID> ended = ends.of(by.productionId()).keySet();
        itemIds.stream().filter(ended::contains).findFirst().ifPresent(item -> {
            throw new Refusal(
                    "hire.refused.ended", items.get(by.productionId(), item).code());
        });
    }

    private void enter(Membership by, UUID agreementId, int number, Act act, NewTerms terms) {
        suppliers.get(by.productionId(), terms.supplierId());
        rows.enter(by.personId(), agreementId, number, act, terms);
    }

    /** Tells the inventory what the agreement says now, and reckons anew what ended under it. */
    private void told(Membership by, UUID agreementId, String action) {
        HireAgreement agreement = agreements.get(by.productionId(), agreementId);
        List<Hired> under = hires.all(by.productionId(), by.zone()).stream()
                .filter(hired -> agreementId.equals(hired.item().agreementId()))
                .toList();
        inventory.hired(
                by,
                agreement.code(),
                under.stream()
                        .filter(Hired::isHere)
                        .map(hired -> hiredAs(agreement, hired))
                        .toList());
        under.stream().filter(hired -> hired.end() != null).forEach(hired -> reckonAnew(by, agreement, hired));
        TermsEntry newest = agreement.terms().newest();
        String codes = under.stream()
                .filter(hired ->
                        newest.weekMinorUnits().containsKey(hired.item().id()))
                .map(hired -> hired.item().code())
                .collect(Collectors.joining(", "));
        trail.add(by.act(
                action,
                "hire",
                agreement.code(),
                "%s, until %s: %s".formatted(newest.supplier(), newest.dueOn(), codes)));
    }

    private static HiredAs hiredAs(HireAgreement agreement, Hired hired) {
        HireTerms terms = agreement.terms().of(hired.item().id()).orElseThrow();
        return new HiredAs(hired.item().id(), agreement.supplier(), terms.weekMinorUnits(), terms.dueOn());
    }

    private void reckonAnew(Membership by, HireAgreement agreement, Hired hired) {
        HireEnd end = Objects.requireNonNull(hired.end());
        HireCost cost = hired.ifReturnedOn(end.endedOn()).orElseThrow();
        boolean same = end.startedOn().equals(hired.startedOn())
                && Objects.equals(end.dueOn(), hired.dueOn())
                && end.hireMinorUnits() == cost.hireMinorUnits()
                && end.lateMinorUnits() == cost.lateMinorUnits();
        if (!same) {
            ends.keep(by.productionId(), hired, end.endedOn(), end.number(), by.personId(), agreement.code());
        }
    }

    /**
     * Corrects the date on which an item went back, and what its hire came to by it.
     *
     * @param seen how many entries about its end the person has seen
     * @throws Refusal if somebody else corrected it meanwhile
     * @throws NotFoundException if no such hire has ended in this production
     */
    @Transactional
    public void correctEnd(Membership by, UUID itemId, LocalDate endedOn, String note, int seen) {
        Hired hired = hires.get(by.productionId(), by.zone(), itemId);
        if (hired.end() == null) {
            throw new NotFoundException();
        }
        ends.keep(by.productionId(), hired, endedOn, seen, by.personId(), note);
        trail.add(by.act("hire.end-corrected", "item", hired.item().code(), endedOn.toString()));
    }

    private static Set<UUID> without(Set<UUID> all, Set<UUID> these) {
        Set<UUID> left = new HashSet<>(all);
        left.removeAll(these);
        return left;
    }
}
