package rollbook.inventory;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.support.DefaultMessageSourceResolvable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.production.Places;
import rollbook.production.Signatory;
import rollbook.web.Refusal;

/** Who has which item where, and in what condition: each act adds a link to the item's chain and changes the item with it. */
@Service
public class Custody {
    private final JdbcClient jdbc;
    private final MediaItems items;
    private final Places places;
    private final ObjectProvider<ItemHold> holds;
    private final ObjectProvider<ItemJourney> journeys;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Custody(
            JdbcClient jdbc,
            MediaItems items,
            Places places,
            ObjectProvider<ItemHold> holds,
            ObjectProvider<ItemJourney> journeys,
            AuditTrail trail,
            ApplicationEventPublisher events,
            Clock clock) {
        this.jdbc = jdbc;
        this.items = items;
        this.places = places;
        this.holds = holds;
        this.journeys = journeys;
        this.trail = trail;
        this.events = events;
        this.clock = clock;
    }

    /** The chain of an item, newest first; empty if this production has no such item. */
    public List<CustodyEntry> chain(UUID productionId, UUID itemId) {
        return jdbc.sql("""
                        select c.at, c.act, p.name as place_name, c.holder, c.condition, c.note,
                               coalesce(person.display_name, c.by_name) as person_name, c.person_id is null as by_link
                        from inventory_custody c
                        join production_place p on p.id = c.place_id
                        left join people_person person on person.id = c.person_id
                        where c.production_id = ? and c.item_id = ? order by c.id desc
                        """)
                .params(productionId, itemId)
                .query(CustodyEntry.class)
                .list();
    }

    /**
     * @param version of the item that the mover saw
     * @throws Refusal if somebody else changed the item meanwhile, or it isn't with the production, or it is on its way
     */
    @Transactional
    public void move(Membership by, UUID itemId, UUID placeId, String holder, String note, int version) {
        MediaItem item = items.lock(by.productionId(), itemId);
        if (item.version() != version) {
            throw new Refusal("inventory.refused.changed-meanwhile", item.code());
        }
        journey(by.productionId(), itemId).ifPresent(journey -> {
            throw underWay(item, journey);
        });
        enter(by.signatory(), item, CustodyAct.MOVED, placeId, holder, note);
    }

    /** Where the item is on its way to, if it is. */
    Optional<ItemJourney.Journey> journey(UUID productionId, UUID itemId) {
        return Optional.ofNullable(journeys(productionId, List.of(itemId)).get(itemId));
    }

    /** Where those of the items are on their way to that are. */
    Map<UUID, ItemJourney.Journey> journeys(UUID productionId, Collection<UUID> itemIds) {
        Map<UUID, ItemJourney.Journey> all = new HashMap<>();
        journeys.orderedStream().forEach(of -> of.of(productionId, itemIds).forEach(all::putIfAbsent));
        return all;
    }

    static Refusal underWay(MediaItem item, ItemJourney.Journey journey) {
        return new Refusal("inventory.refused.under-way", item.code(), text(journey.says()));
    }

    /** Notes that an item goes from hand to hand on its way somewhere, or that it has come to a place. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void passOn(Signatory by, UUID itemId, UUID placeId, String holder, String note) {
        enter(by, items.lock(by.productionId(), itemId), CustodyAct.MOVED, placeId, holder, note);
    }

    /** Doubts an item: until its release it isn't used, and no copy on it counts. */
    @Transactional
    public void quarantine(Membership by, UUID itemId, String reason) {
        quarantine(by.signatory(), itemId, reason);
    }

    @Transactional
    public void quarantine(Signatory by, UUID itemId, String reason) {
        stay(by, itemId, CustodyAct.QUARANTINED, reason);
    }

    @Transactional
    public void release(Membership by, UUID itemId, String reason) {
        stay(by.signatory(), itemId, CustodyAct.RELEASED, reason);
    }

    @Transactional
    public void reportLost(Membership by, UUID itemId, String reason) {
        stay(by.signatory(), itemId, CustodyAct.LOST, reason);
    }

    /** A lost item is here again, in quarantine until somebody releases it. */
    @Transactional
    public void reportFound(Membership by, UUID itemId, UUID placeId, String holder, String note) {
        enter(by.signatory(), items.lock(by.productionId(), itemId), CustodyAct.FOUND, placeId, holder, note);
    }

    /**
     * Takes an item out of use for good.
     *
     * @throws Refusal if it is a card with a roll on it, or something else depends on it
     */
    @Transactional
    public void retire(Membership by, UUID itemId, String reason) {
        lockFirst(by, List.of(itemId));
        MediaItem item = items.lock(by.productionId(), itemId);
        requireNothingOn(item, by);
        enter(by.signatory(), item, CustodyAct.RETIRED, item.placeId(), item.holder(), reason);
        events.publishEvent(new ItemLeft(by.productionId(), itemId, today(by), by.personId(), reason));
    }

    /** Gives one hired item back today, as {@link #giveBackAll} does. */
    @Transactional
    public void giveBack(Membership by, UUID itemId, String note) {
        giveBackAll(by, List.of(itemId), today(by), note);
    }

    /**
     * Gives hired items back to their suppliers, who hold them from then on: all of them, or none.
     *
     * @param on the date on which they went back, in the production's zone
     * @throws Refusal if one of them isn't hired, is a card with a roll on it, or something else depends on it
     */
    @Transactional
    public void giveBackAll(Membership by, Collection<UUID> itemIds, LocalDate on, String note) {
        lockFirst(by, itemIds);
        List<MediaItem> leaving = itemIds.stream()
                .distinct()
                .map(id -> items.get(by.productionId(), id))
                .sorted(Comparator.comparing(MediaItem::code))
                .map(item -> items.lock(by.productionId(), item.id()))
                .toList();
        for (MediaItem item : leaving) {
            if (item.ownership() != Ownership.HIRED) {
                throw new Refusal("inventory.refused.not-hired", item.code());
            }
            requireNothingOn(item, by);
            enter(by.signatory(), item, CustodyAct.RETURNED, item.placeId(), item.supplier(), note);
            events.publishEvent(new ItemLeft(by.productionId(), item.id(), on, by.personId(), note));
        }
    }

    private void lockFirst(Membership by, Collection<UUID> itemIds) {
        holds.orderedStream().forEach(hold -> hold.lockFirst(by.productionId(), itemIds));
    }

    private LocalDate today(Membership by) {
        return LocalDate.now(clock.withZone(by.zone()));
    }

    private void stay(Signatory by, UUID itemId, CustodyAct act, String note) {
        MediaItem item = items.lock(by.productionId(), itemId);
        enter(by, item, act, item.placeId(), item.holder(), note);
    }

    private void requireNothingOn(MediaItem item, Membership by) {
        if (item.cardState() != null && item.cardState() != CardState.BLANK) {
            throw new Refusal(
                    "inventory.refused.holds-roll",
                    item.code(),
                    word(ItemState.valueOf(item.cardState().name())));
        }
        holds.orderedStream()
                .map(hold -> hold.reasonToKeep(by.productionId(), item.id()))
                .flatMap(Optional::stream)
                .findFirst()
                .ifPresent(hold -> {
                    throw new Refusal("inventory.refused.needed", item.code(), text(hold));
                });
    }

    void enter(Signatory by, MediaItem item, CustodyAct act, UUID placeId, String holder, String note) {
        if (!act.startsFrom(item.condition())) {
            throw new Refusal(
                    "inventory.refused.condition",
                    item.code(),
                    word(ItemState.valueOf(item.condition().name())));
        }
        String placeName = places.get(by.productionId(), placeId).name();
        Condition condition = act.endsIn(item.condition());
        jdbc.sql("""
                        update inventory_item set place_id = ?, holder = ?, condition = ?, version = version + 1
                        where production_id = ? and id = ?
                        """)
                .params(placeId, holder, condition.name(), by.productionId(), item.id())
                .update();
        jdbc.sql("""
                        insert into inventory_custody (production_id, item_id, at, act, place_id, holder, condition, note, person_id, by_name)
                        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
                        """)
                .param(by.productionId())
                .param(item.id())
                .param(Timestamp.from(clock.instant()))
                .param(act.name())
                .param(placeId)
                .param(holder)
                .param(condition.name())
                .param(note)
                .param(by.personId())
                .param(by.personId() == null ? by.name() : null)
                .update();
        trail.add(by.act(act.action(), "item", item.code(), detail(act, placeName, holder, note)));
        events.publishEvent(new MediaItemChanged(by.productionId(), item.id()));
    }

    private static String detail(CustodyAct act, String placeName, String holder, String note) {
        String where = holder.isEmpty() ? placeName : placeName + ", " + holder;
        if (!act.moves()) {
            return note;
        }
        return note.isEmpty() ? where : where + ": " + note;
    }

    private static DefaultMessageSourceResolvable word(ItemState state) {
        return new DefaultMessageSourceResolvable(state.key());
    }

    private static DefaultMessageSourceResolvable text(Hold hold) {
        return new DefaultMessageSourceResolvable(
                new String[] {hold.key()}, hold.args().toArray());
    }
}
