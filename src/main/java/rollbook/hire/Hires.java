package rollbook.hire;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.inventory.ItemLeft;
import rollbook.production.Productions;
import rollbook.web.NotFoundException;

/** What is hired and was, with what it costs. */
@Service
public class Hires {

    private final HiredItems items;
    private final Agreements agreements;
    private final HireEnds ends;
    private final Productions productions;

    Hires(HiredItems items, Agreements agreements, HireEnds ends, Productions productions) {
        this.items = items;
        this.agreements = agreements;
        this.ends = ends;
        this.productions = productions;
    }

    /** Every item that is or was hired, ordered by code; in three statements. */
    List<Hired> all(UUID productionId, ZoneId zone) {
        Map<UUID, HireAgreement> agreed = agreements.all(productionId);
        Map<UUID, HireEnd> ended = ends.of(productionId);
        return items.of(productionId).stream()
                .map(item -> new Hired(
                        item,
                        item.agreementId() == null ? null : agreed.get(item.agreementId()),
                        ended.get(item.id()),
                        item.cameOn() == null ? LocalDate.ofInstant(item.registeredAt(), zone) : item.cameOn()))
                .toList();
    }

    /** @throws NotFoundException if this production hasn't hired such an item */
    Hired get(UUID productionId, ZoneId zone, UUID itemId) {
        return all(productionId, zone).stream()
                .filter(hired -> hired.item().id().equals(itemId))
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }

    /**
     * What each item costs that is or was hired, ordered by code; in three statements.
     * Without what left at a cost that nobody knew.
     *
     * @param zone the production's own
     * @param until the date until which costs have accrued, mostly today
     */
    public List<HiredItemCost> costs(UUID productionId, ZoneId zone, LocalDate until) {
        return all(productionId, zone).stream()
                .filter(hired -> hired.isHere() || hired.end() != null)
                .map(hired -> cost(hired, until))
                .toList();
    }

    private static HiredItemCost cost(Hired hired, LocalDate until) {
        HireEnd end = hired.end();
        long accrued = hired.ifReturnedOn(until).orElse(HireCost.NONE).totalMinorUnits();
        long committed = hired.committed(until).orElse(HireCost.NONE).totalMinorUnits();
        return new HiredItemCost(
                hired.item().id(),
                hired.item().code(),
                hired.item().kind(),
                hired.supplier(),
                hired.agreementCode(),
                end == null ? hired.startedOn() : end.startedOn(),
                end == null ? hired.dueOn() : end.dueOn(),
                end == null ? null : end.endedOn(),
                hired.weekMinorUnits(),
                end == null ? accrued : end.totalMinorUnits(),
                end == null ? committed : end.totalMinorUnits());
    }

    /** What left is hired no longer; what that came to is kept with it. */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void onItemLeft(ItemLeft left) {
        all(left.productionId(), productions.get(left.productionId()).zone()).stream()
                .filter(hired -> hired.item().id().equals(left.itemId()))
                .forEach(hired -> ends.keep(left.productionId(), hired, left.on(), 0, left.personId(), left.note()));
    }
}
