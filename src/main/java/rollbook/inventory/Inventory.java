package rollbook.inventory;

import java.sql.Date;
import java.sql.Timestamp;
import java.time.Clock;
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
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.namedparam.MapSqlParameterSource;
import org.springframework.jdbc.core.namedparam.NamedParameterJdbcTemplate;
import org.springframework.jdbc.core.namedparam.SqlParameterSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.production.Place;
import rollbook.production.Places;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** Registers media items and corrects what is known of them. */
@Service
public class Inventory {
    static final String UNDER_AGREEMENT = "inventory.refused.under-agreement";

    private static final String ADD = """
            insert into inventory_item (id, production_id, code, serial, kind, model, capacity_bytes, read_bytes_per_second,
                write_bytes_per_second, ownership, supplier, cost_minor_units, hired_until, leg_id, place_id, holder,
                condition, card_state, created_at)
            values (:id, :production, :code, :serial, :kind, :model, :capacity, :read, :write, :ownership, :supplier, :cost,
                :hiredUntil, :leg, :place, :holder, 'GOOD', :cardState, :now)
            on conflict do nothing
            """;
    private static final String CHANGE = """
            update inventory_item set code = :code, serial = :serial, model = :model, capacity_bytes = :capacity,
                read_bytes_per_second = :read, write_bytes_per_second = :write, ownership = :ownership,
                supplier = :supplier, cost_minor_units = :cost, hired_until = :hiredUntil, leg_id = :leg,
                version = version + 1
            where production_id = :production and id = :id
            """;

    private final JdbcClient jdbc;
    private final NamedParameterJdbcTemplate batches;
    private final MediaItems items;
    private final Places places;
    private final CopyPlan plan;
    private final ObjectProvider<TermsKeeper> terms;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Inventory(
            JdbcClient jdbc,
            NamedParameterJdbcTemplate batches,
            MediaItems items,
            Places places,
            CopyPlan plan,
            ObjectProvider<TermsKeeper> terms,
            AuditTrail trail,
            ApplicationEventPublisher events,
            Clock clock) {
        this.jdbc = jdbc;
        this.batches = batches;
        this.items = items;
        this.places = places;
        this.plan = plan;
        this.terms = terms;
        this.trail = trail;
        this.events = events;
        this.clock = clock;
    }

    /**
     * @throws Refusal if the code or the serial number is taken, the leg is for another kind, or a capacity is missing
     * @throws NotFoundException if this production has no such place or leg
     */
    @Transactional
    public UUID register(Membership by, NewItem item) {
        UUID id = add(by, List.of(item)).get(0);
        trail.add(by.act("item.registered", "item", item.code(), item.details().model()));
        return id;
    }

    /**
     * Registers as many like items as the run has numbers, or none of them.
     *
     * @param like what they have in common; its code is ignored
     * @throws Refusal as {@link #register}, naming every code that is taken
     */
    @Transactional
    public List<UUID> registerRun(Membership by, NewItem like, NumberRun run) {
        List<NewItem> added = run.codes().stream().map(like::withCode).toList();
        List<UUID> ids = add(by, added);
        trail.add(by.act("item.registered", "item", span(added), like.details().model()));
        return ids;
    }

    /**
     * Registers items of several kinds that came together, or none of them.
     *
     * @return their ids, in the order of the items
     * @throws Refusal as {@link #register}, naming every code or serial number that is taken
     */
    @Transactional
    public List<UUID> registerAll(Membership by, List<NewItem> list) {
        List<UUID> ids = add(by, list);
        trail.add(by.act("item.registered", "item", span(list), models(list)));
        return ids;
    }

    /**
     * Registers all items of a list, or none of them.
     *
     * @throws Refusal as {@link #register}, naming every code that is taken
     */
    @Transactional
    public List<UUID> importAll(Membership by, List<NewItem> list) {
        List<UUID> ids = add(by, list);
        trail.add(by.act("item.imported", "item", span(list), Integer.toString(list.size())));
        return ids;
    }

    /**
     * Corrects what is known of an item.
     *
     * @param version of the item that the corrector saw
     * @throws Refusal as {@link #register}, or if somebody else changed the item meanwhile
     */
    @Transactional
    public void edit(Membership by, UUID itemId, ItemDetails details, int version) {
        MediaItem before = items.lock(by.productionId(), itemId);
        if (before.version() != version) {
            throw new Refusal("inventory.refused.changed-meanwhile", before.code());
        }
        check(before.kind(), details, plan.legs(by.productionId()));
        requireOwnTerms(by, before, details);
        try {
            jdbc.sql(CHANGE).paramSource(values(by, itemId, details)).update();
        } catch (DuplicateKeyException taken) {
            throw isAbout(taken, "inventory_item_serial_key")
                    ? new Refusal("inventory.refused.serials-exist", details.serial(), 1)
                    : new Refusal("inventory.refused.codes-exist", details.code(), 1);
        }
        trail.add(by.act("item.edited", "item", before.code(), Changes.between(before, details)));
        events.publishEvent(new MediaItemChanged(by.productionId(), itemId));
    }

    /**
     * Writes to items what an agreement says of them. The caller has locked them.
     *
     * @param agreementCode for the record
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void hired(Membership by, String agreementCode, List<HiredAs> agreed) {
        for (HiredAs hired : agreed) {
            MediaItem before = items.lock(by.productionId(), hired.itemId());
            int changed = jdbc.sql("""
                            update inventory_item set ownership = 'HIRED', supplier = :supplier, cost_minor_units = :cost,
                                hired_until = :until, version = version + 1
                            where production_id = :production and id = :id
                              and (ownership, supplier, cost_minor_units, hired_until)
                                  is distinct from ('HIRED', :supplier, :cost, :until)
                            """)
                    .param("production", by.productionId())
                    .param("id", hired.itemId())
                    .param("supplier", hired.supplier())
                    .param("cost", hired.weekMinorUnits())
                    .param("until", Date.valueOf(hired.until()))
                    .update();
            if (changed > 0) {
                trail.add(by.act("item.hired", "item", before.code(), agreementCode + ": until " + hired.until()));
                events.publishEvent(new MediaItemChanged(by.productionId(), hired.itemId()));
            }
        }
    }

    private void requireOwnTerms(Membership by, MediaItem before, ItemDetails details) {
        boolean same = before.ownership() == details.ownership()
                && before.supplier().equals(details.supplier())
                && Objects.equals(before.costMinorUnits(), details.costMinorUnits())
                && Objects.equals(before.hiredUntil(), details.hiredUntil());
        if (!same) {
            terms.orderedStream()
                    .map(keeper -> keeper.agreementOf(by.productionId(), before.id()))
                    .flatMap(Optional::stream)
                    .findFirst()
                    .ifPresent(agreement -> {
                        throw new Refusal(UNDER_AGREEMENT, before.code(), agreement);
                    });
        }
    }

    private List<UUID> add(Membership by, List<NewItem> list) {
        check(by, list);
        Map<UUID, NewItem> byId = new LinkedHashMap<>();
        list.forEach(item -> byId.put(UUID.randomUUID(), item));
        // In one order for everybody, so that two lists with the same codes wait for each other and don't lock up.
        batches.batchUpdate(
                ADD,
                byId.entrySet().stream()
                        .sorted(Comparator.comparing(entry -> entry.getValue().code()))
                        .map(entry -> values(by, entry.getKey(), entry.getValue()))
                        .toArray(SqlParameterSource[]::new));
        Set<UUID> added = new HashSet<>(jdbc.sql("""
                        insert into inventory_custody (production_id, item_id, at, act, place_id, holder, condition, person_id)
                        select production_id, id, created_at, 'REGISTERED', place_id, holder, condition, :person
                        from inventory_item where production_id = :production and id in (:ids)
                        returning item_id
                        """)
                .param("person", by.personId())
                .param("production", by.productionId())
                .param("ids", byId.keySet())
                .query(UUID.class)
                .list());
        if (added.size() < list.size()) {
            byId.keySet().removeAll(added);
            throw taken(by, List.copyOf(byId.values()));
        }
        added.forEach(id -> events.publishEvent(new MediaItemChanged(by.productionId(), id)));
        return List.copyOf(byId.keySet());
    }

    /** Why these couldn't be added: their codes are taken or, of those whose codes aren't, their serial numbers. */
    private Refusal taken(Membership by, List<NewItem> refused) {
        List<String> codes = items
                .findByCodes(
                        by.productionId(), refused.stream().map(NewItem::code).toList())
                .stream()
                .map(MediaItem::code)
                .toList();
        return codes.isEmpty()
                ? new Refusal(
                        "inventory.refused.serials-exist",
                        joined(refused.stream().map(item -> item.details().serial())),
                        refused.size())
                : new Refusal("inventory.refused.codes-exist", joined(codes.stream()), codes.size());
    }

    private static boolean isAbout(DuplicateKeyException taken, String index) {
        return String.valueOf(taken.getMessage()).contains(index);
    }

    private void check(Membership by, List<NewItem> list) {
        if (list.isEmpty()) {
            throw new IllegalArgumentException("nothing to register");
        }
        List<Leg> legs = plan.legs(by.productionId());
        Set<UUID> known = places.list(by.productionId()).stream().map(Place::id).collect(Collectors.toSet());
        for (NewItem item : list) {
            if (!known.contains(item.placeId())) {
                throw new NotFoundException();
            }
            check(item.kind(), item.details(), legs);
        }
    }

    private static void check(MediaKind kind, ItemDetails details, List<Leg> legs) {
        if (kind.hasCapacity() && details.capacityBytes() == null) {
            throw new Refusal("inventory.refused.no-capacity", details.code());
        }
        if (details.legId() != null) {
            Leg leg = legs.stream()
                    .filter(candidate -> candidate.id().equals(details.legId()))
                    .findFirst()
                    .orElseThrow(NotFoundException::new);
            if (leg.mediaKind() != kind) {
                throw new Refusal("inventory.refused.leg-kind", details.code(), leg.name());
            }
        }
    }

    private MapSqlParameterSource values(Membership by, UUID id, NewItem item) {
        return values(by, id, item.details())
                .addValue("kind", item.kind().name())
                .addValue("place", item.placeId())
                .addValue("holder", item.holder())
                .addValue("cardState", item.kind() == MediaKind.CARD ? CardState.BLANK.name() : null)
                .addValue("now", Timestamp.from(clock.instant()));
    }

    private static MapSqlParameterSource values(Membership by, UUID id, ItemDetails details) {
        return new MapSqlParameterSource()
                .addValue("id", id)
                .addValue("production", by.productionId())
                .addValue("code", details.code())
                .addValue("serial", details.serial())
                .addValue("model", details.model())
                .addValue("capacity", details.capacityBytes())
                .addValue("read", details.readBytesPerSecond())
                .addValue("write", details.writeBytesPerSecond())
                .addValue("ownership", details.ownership().name())
                .addValue("supplier", details.supplier())
                .addValue("cost", details.costMinorUnits())
                .addValue("hiredUntil", date(details))
                .addValue("leg", details.legId());
    }

    private static @Nullable Date date(ItemDetails details) {
        return details.hiredUntil() == null ? null : Date.valueOf(details.hiredUntil());
    }

    private static String joined(Stream<String> texts) {
        return texts.sorted().collect(Collectors.joining(", "));
    }

    private static String models(List<NewItem> list) {
        return list.stream().map(item -> item.details().model()).distinct().collect(Collectors.joining(", "));
    }

    private static String span(List<NewItem> list) {
        String first = list.get(0).code();
        return list.size() == 1
                ? first
                : first + "…" + list.get(list.size() - 1).code();
    }
}
