package rollbook.supplier;

import java.sql.Date;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.ordering.Hire;
import rollbook.production.MediaKind;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** What suppliers offer at which price. */
@Service
public class Catalogue {
    private static final String ITEMS = """
            select i.id, i.supplier_id, i.kind, i.model, i.capacity_bytes, i.read_bytes_per_second,
                   i.write_bytes_per_second, i.pack_size, i.archived, i.version,
                   p.number, p.valid_from, p.item_minor_units, p.hire_week_minor_units, p.hire_minimum_weeks,
                   p.entered_at, coalesce(e.display_name, '') as entered_by
            from supplier_supplier s
            join supplier_item i on i.supplier_id = s.id
            left join supplier_price p on p.item_id = i.id
            left join people_person e on e.id = p.entered_by
            where s.production_id = :production
            """;

    private static final String SORTED =
            " order by i.archived, i.kind, lower(i.model), i.capacity_bytes, i.id, p.number";

    private final JdbcClient jdbc;
    private final Suppliers suppliers;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Catalogue(JdbcClient jdbc, Suppliers suppliers, AuditTrail trail, ApplicationEventPublisher events, Clock clock) {
        this.jdbc = jdbc;
        this.suppliers = suppliers;
        this.trail = trail;
        this.events = events;
        this.clock = clock;
    }

    /** A price as it is entered. */
    public record NewPrice(
            LocalDate validFrom,
            @Nullable Long itemMinorUnits,
            @Nullable Hire hire) {}

    /** Of all suppliers, those that aren't to be had any more last. */
    public List<CatalogueItem> list(UUID productionId) {
        return items(jdbc.sql(ITEMS + SORTED).param("production", productionId));
    }

    /** @throws NotFoundException if this production's suppliers offer no such item */
    public CatalogueItem get(UUID productionId, UUID itemId) {
        return items(jdbc.sql(ITEMS + " and i.id = :item" + SORTED)
                        .param("production", productionId)
                        .param("item", itemId))
                .stream()
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }

    @Transactional
    public UUID add(Membership by, UUID supplierId, CatalogueDetails details) {
        MediaSupplier supplier = suppliers.get(by.productionId(), supplierId);
        UUID id = UUID.randomUUID();
        with(details, """
                        insert into supplier_item (id, supplier_id, kind, model, capacity_bytes, read_bytes_per_second,
                            write_bytes_per_second, pack_size)
                        values (:id, :supplier, :kind, :model, :capacity, :read, :write, :pack)
                        """).param("id", id).param("supplier", supplierId).update();
        trail.add(by.act("catalogue.added", "supplier", supplier.name(), detail(details)));
        return id;
    }

    /** @throws Refusal if somebody else changed it meanwhile */
    @Transactional
    public void change(Membership by, UUID itemId, CatalogueDetails details, int version) {
        CatalogueItem item = get(by.productionId(), itemId);
        int changed =
                with(details, """
                        update supplier_item set kind = :kind, model = :model, capacity_bytes = :capacity,
                            read_bytes_per_second = :read, write_bytes_per_second = :write, pack_size = :pack,
                            version = version + 1
                        where id = :id and version = :version
                        """).param("id", itemId).param("version", version).update();
        told(by, item, "catalogue.changed", detail(details), changed);
    }

    /**
     * Says that an item isn't to be had any more, or that it is again.
     *
     * @throws Refusal if somebody else changed it meanwhile
     */
    @Transactional
    public void archive(Membership by, UUID itemId, boolean archived, int version) {
        CatalogueItem item = get(by.productionId(), itemId);
        int changed = jdbc.sql(
                        "update supplier_item set archived = ?, version = version + 1 where id = ? and version = ?")
                .params(archived, itemId, version)
                .update();
        told(by, item, archived ? "catalogue.archived" : "catalogue.restored", detail(item.details()), changed);
    }

    /**
     * Adds a price; none is ever changed.
     *
     * @param afterPrice the number of the last price the person has seen, zero for none
     * @throws Refusal if somebody else entered one meanwhile
     */
    @Transactional
    public void price(Membership by, UUID itemId, NewPrice price, int afterPrice) {
        CatalogueItem item = get(by.productionId(), itemId);
        if (item.prices().entered().size() != afterPrice) {
            throw new Refusal("supplier.refused.changed", item.details().model());
        }
        Hire hire = price.hire();
        try {
            jdbc.sql("""
                            insert into supplier_price (item_id, number, entered_at, entered_by, valid_from,
                                item_minor_units, hire_week_minor_units, hire_minimum_weeks)
                            values (:item, :number, :now, :by, :validFrom, :price, :hireWeek, :hireWeeks)
                            """)
                    .param("item", itemId)
                    .param("number", afterPrice + 1)
                    .param("now", Timestamp.from(clock.instant()))
                    .param("by", by.personId())
                    .param("validFrom", Date.valueOf(price.validFrom()))
                    .param("price", price.itemMinorUnits(), Types.BIGINT)
                    .param("hireWeek", hire == null ? null : hire.weeklyRateMinorUnits(), Types.BIGINT)
                    .param("hireWeeks", hire == null ? null : hire.minimumWeeks(), Types.INTEGER)
                    .update();
        } catch (DuplicateKeyException taken) {
            throw new Refusal("supplier.refused.changed", item.details().model());
        }
        told(
                by,
                item,
                "catalogue.priced",
                "%s, from %s: %s to buy, %s a week"
                        .formatted(
                                item.details().model(),
                                price.validFrom(),
                                Objects.toString(price.itemMinorUnits(), "-"),
                                hire == null ? "-" : Long.toString(hire.weeklyRateMinorUnits())),
                1);
    }

    private void told(Membership by, CatalogueItem item, String action, String detail, int changed) {
        if (changed == 0) {
            throw new Refusal("supplier.refused.changed", item.details().model());
        }
        String supplier = suppliers.get(by.productionId(), item.supplierId()).name();
        trail.add(by.act(action, "supplier", supplier, detail));
        events.publishEvent(new SupplierChanged(by.productionId()));
    }

    private JdbcClient.StatementSpec with(CatalogueDetails details, String sql) {
        return jdbc.sql(sql)
                .param("kind", details.kind().name())
                .param("model", details.model())
                .param("capacity", details.capacityBytes(), Types.BIGINT)
                .param("read", details.readBytesPerSecond(), Types.BIGINT)
                .param("write", details.writeBytesPerSecond(), Types.BIGINT)
                .param("pack", details.packSize());
    }

    private static List<CatalogueItem> items(JdbcClient.StatementSpec query) {
        Map<UUID, CatalogueItem> items = new LinkedHashMap<>();
        Map<UUID, List<Price>> prices = new LinkedHashMap<>();
        query.query(row -> {
            UUID id = row.getObject("id", UUID.class);
            items.putIfAbsent(id, item(id, row));
            List<Price> ofItem = prices.computeIfAbsent(id, any -> new ArrayList<>());
            if (row.getObject("number") != null) {
                ofItem.add(price(row));
            }
        });
        return items.values().stream()
                .map(item -> new CatalogueItem(
                        item.id(),
                        item.supplierId(),
                        item.details(),
                        item.archived(),
                        item.version(),
                        new PriceHistory(prices.get(item.id()))))
                .toList();
    }

    private static CatalogueItem item(UUID id, ResultSet row) throws SQLException {
        return new CatalogueItem(
                id,
                row.getObject("supplier_id", UUID.class),
                new CatalogueDetails(
                        MediaKind.valueOf(row.getString("kind")),
                        row.getString("model"),
                        row.getObject("capacity_bytes", Long.class),
                        row.getObject("read_bytes_per_second", Long.class),
                        row.getObject("write_bytes_per_second", Long.class),
                        row.getInt("pack_size")),
                row.getBoolean("archived"),
                row.getInt("version"),
                new PriceHistory(List.of()));
    }

    private static Price price(ResultSet row) throws SQLException {
        Long hireWeek = row.getObject("hire_week_minor_units", Long.class);
        return new Price(
                row.getInt("number"),
                row.getObject("valid_from", LocalDate.class),
                row.getObject("item_minor_units", Long.class),
                hireWeek == null ? null : new Hire(hireWeek, row.getInt("hire_minimum_weeks")),
                row.getTimestamp("entered_at").toInstant(),
                row.getString("entered_by"));
    }

    private static String detail(CatalogueDetails details) {
        return "%s, %s B, pack %d"
                .formatted(details.model(), Objects.toString(details.capacityBytes(), "-"), details.packSize());
    }
}
