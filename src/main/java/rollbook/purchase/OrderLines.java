package rollbook.purchase;

import java.sql.Types;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.supplier.Catalogue;
import rollbook.supplier.CatalogueDetails;
import rollbook.supplier.CatalogueItem;
import rollbook.supplier.Price;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** Writes the lines of proposed orders, with what the catalogue says of them that day. */
@Repository
class OrderLines {
    private final JdbcClient jdbc;
    private final Catalogue catalogue;
    private final CopyPlan plan;

    OrderLines(JdbcClient jdbc, Catalogue catalogue, CopyPlan plan) {
        this.jdbc = jdbc;
        this.catalogue = catalogue;
        this.plan = plan;
    }

    /** What of a catalogue the lines are, by its id. */
    Map<UUID, CatalogueItem> items(UUID productionId, List<NewOrder.Line> lines) {
        Set<UUID> wanted = lines.stream()
                .map(NewOrder.Line::itemId)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet());
        Map<UUID, CatalogueItem> found = catalogue.list(productionId).stream()
                .filter(item -> wanted.contains(item.id()))
                .collect(Collectors.toMap(CatalogueItem::id, Function.identity()));
        if (found.size() < wanted.size()) {
            throw new NotFoundException();
        }
        return found;
    }

    /**
     * The one supplier that offers all of the lines; null while one is in no catalogue.
     *
     * @throws Refusal if they are of several suppliers
     */
    static @Nullable UUID supplier(List<NewOrder.Line> lines, Map<UUID, CatalogueItem> items) {
        Set<UUID> suppliers =
                items.values().stream().map(CatalogueItem::supplierId).collect(Collectors.toSet());
        if (suppliers.size() > 1) {
            throw new Refusal("purchase.refused.suppliers");
        }
        boolean all = lines.stream().allMatch(line -> line.itemId() != null);
        return all ? suppliers.iterator().next() : null;
    }

    /**
     * Makes these the lines of an order.
     *
     * @throws NotFoundException if a leg or a line that is kept isn't there
     */
    void write(
            UUID productionId,
            UUID orderId,
            List<NewOrder.Line> lines,
            Map<UUID, CatalogueItem> items,
            LocalDate today) {
        Set<UUID> legs = plan.legs(productionId).stream().map(Leg::id).collect(Collectors.toSet());
        if (lines.stream().anyMatch(line -> line.legId() != null && !legs.contains(line.legId()))) {
            throw new NotFoundException();
        }
        jdbc.sql("update purchase_line set removed = true where order_id = ?")
                .param(orderId)
                .update();
        for (int i = 0; i < lines.size(); i++) {
            write(orderId, i + 1, Written.of(lines.get(i), items, today));
        }
    }

    /** A line with what it is. */
    private record Written(
            NewOrder.Line line,
            CatalogueDetails details,
            @Nullable Long unitMinorUnits) {
        static Written of(NewOrder.Line line, Map<UUID, CatalogueItem> items, LocalDate today) {
            CatalogueItem item = line.itemId() == null ? null : items.get(line.itemId());
            return item == null
                    ? new Written(
                            line,
                            new CatalogueDetails(
                                    Objects.requireNonNull(line.kind()), line.model(), null, null, null, 1),
                            line.unitMinorUnits())
                    : new Written(
                            line,
                            item.details(),
                            line.unitMinorUnits() == null
                                    ? unit(item, line.hireWeeks() != null, today)
                                    : line.unitMinorUnits());
        }
    }

    /** What an item costs on a day, if hired for a week; null if it isn't to be had that way. */
    static @Nullable Long unit(CatalogueItem item, boolean hired, LocalDate today) {
        Price price = item.prices().on(today).orElse(null);
        if (price == null) {
            return null;
        } else if (hired) {
            return price.hire() == null ? null : price.hire().weeklyRateMinorUnits();
        }
        return price.itemMinorUnits();
    }

    private void write(UUID orderId, int position, Written written) {
        NewOrder.Line line = written.line();
        int kept = jdbc.sql("""
                        insert into purchase_line as l (id, order_id, position, catalogue_item_id, kind, model, capacity_bytes,
                            read_bytes_per_second, write_bytes_per_second, items, hire_weeks, unit_minor_units, leg_id)
                        values (:id, :order, :position, :item, :kind, :model, :capacity, :read, :write, :items, :weeks,
                            :unit, :leg)
                        on conflict (id) do update set position = excluded.position,
                            catalogue_item_id = excluded.catalogue_item_id, kind = excluded.kind, model = excluded.model,
                            capacity_bytes = excluded.capacity_bytes,
                            read_bytes_per_second = excluded.read_bytes_per_second,
                            write_bytes_per_second = excluded.write_bytes_per_second, items = excluded.items,
                            hire_weeks = excluded.hire_weeks, unit_minor_units = excluded.unit_minor_units,
                            leg_id = excluded.leg_id, removed = false
                        where l.order_id = excluded.order_id
                        """)
                .param("id", line.id() == null ? UUID.randomUUID() : line.id())
                .param("order", orderId)
                .param("position", position)
                .param("item", line.itemId(), Types.OTHER)
                .param("kind", written.details().kind().name())
                .param("model", written.details().model())
                .param("capacity", written.details().capacityBytes(), Types.BIGINT)
                .param("read", written.details().readBytesPerSecond(), Types.BIGINT)
                .param("write", written.details().writeBytesPerSecond(), Types.BIGINT)
                .param("items", line.items())
                .param("weeks", line.hireWeeks(), Types.INTEGER)
                .param("unit", written.unitMinorUnits(), Types.BIGINT)
                .param("leg", line.legId(), Types.OTHER)
                .update();
        if (kept == 0) {
            throw new NotFoundException();
        }
    }
}
