package rollbook.inventory;

import java.sql.Date;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import rollbook.production.CopyPlan;
import rollbook.production.Leg;
import rollbook.web.Listing;
import rollbook.web.Paged;

/** The list of items, filtered and page by page, and its figures. */
@Repository
public class MediaList {
    private final JdbcClient jdbc;
    private final CopyPlan plan;

    MediaList(JdbcClient jdbc, CopyPlan plan) {
        this.jdbc = jdbc;
        this.plan = plan;
    }

    Paged<ItemRow> page(UUID productionId, MediaFilter filter, Listing.Order<ListColumn> order, int number) {
        long total = jdbc.sql(
                        "select count(*) from inventory_item i join production_place p on p.id = i.place_id where i.production_id = :production"
                                + filter.sql())
                .param("production", productionId)
                .params(filter.sqlParameters())
                .query(Long.class)
                .single();
        int shown = Paged.shown(number, total);
        String part = " limit %d offset %d".formatted(Paged.SIZE, Paged.offset(shown, Paged.SIZE));
        return new Paged<>(rows(productionId, filter, order, part), shown, Paged.SIZE, total);
    }

    /** All that the filter lets through, ordered by code. */
    public List<MediaItem> items(UUID productionId, MediaFilter filter) {
        return items(productionId, filter, ListColumn.USUAL, "");
    }

    List<ItemRow> all(UUID productionId, MediaFilter filter, Listing.Order<ListColumn> order) {
        return rows(productionId, filter, order, "");
    }

    private List<ItemRow> rows(UUID productionId, MediaFilter filter, Listing.Order<ListColumn> order, String part) {
        Map<UUID, String> legNames =
                new HashMap<>(plan.legs(productionId).stream().collect(Collectors.toMap(Leg::id, Leg::name)));
        return items(productionId, filter, order, part).stream()
                .map(item -> new ItemRow(item, item.legId() == null ? null : legNames.get(item.legId())))
                .toList();
    }

    private List<MediaItem> items(UUID productionId, MediaFilter filter, Listing.Order<ListColumn> order, String part) {
        return jdbc.sql(MediaItems.ITEMS + filter.sql() + ListColumn.orderBy(order) + part)
                .param("production", productionId)
                .params(filter.sqlParameters())
                .query(MediaItem.class)
                .list();
    }

    Taken taken(UUID productionId) {
        return new Taken(
                texts("select upper(code) from inventory_item where production_id = ?", productionId),
                texts("""
                        select upper(serial) from inventory_item
                        where production_id = ? and serial <> '' and condition not in ('RETIRED', 'RETURNED')
                        """, productionId));
    }

    private Set<String> texts(String sql, UUID productionId) {
        return new HashSet<>(
                jdbc.sql(sql).param(productionId).query(String.class).list());
    }

    /** @param today in the production's zone */
    MediaFigures figures(UUID productionId, LocalDate today) {
        return jdbc.sql("""
                        select count(*) as registered,
                            count(*) filter (where condition not in ('RETIRED', 'RETURNED')) as present,
                            count(*) filter (where condition = 'GOOD' and kind = 'CARD') as cards,
                            count(*) filter (where condition = 'GOOD' and card_state = 'BLANK') as blank,
                            count(*) filter (where condition = 'GOOD' and card_state = 'HELD') as held,
                            count(*) filter (where condition = 'GOOD' and card_state = 'CLEAR_TO_ERASE') as clear_to_erase,
                            count(*) filter (where condition = 'GOOD' and card_state in ('IN_CAMERA', 'EXPOSED', 'COPYING')) as working,
                            coalesce(string_agg(code, ',' order by upper(code)) filter (where condition = 'QUARANTINED'), '') as quarantined,
                            coalesce(string_agg(code, ',' order by upper(code)) filter (where condition = 'LOST'), '') as lost,
                            coalesce(string_agg(code, ',' order by hired_until, upper(code)) filter (
                                where condition in ('GOOD', 'QUARANTINED') and hired_until < :today), '') as overdue,
                            coalesce(string_agg(code, ',' order by hired_until, upper(code)) filter (
                                where condition in ('GOOD', 'QUARANTINED') and hired_until between :today and :soon), '') as due_soon,
                            max(hired_until) filter (
                                where condition in ('GOOD', 'QUARANTINED') and hired_until between :today and :soon) as due_soon_until
                        from inventory_item where production_id = :production
                        """)
                .param("production", productionId)
                .param("today", Date.valueOf(today))
                .param("soon", Date.valueOf(today.plusDays(MediaFigures.SOON_DAYS)))
                .query(MediaFigures.class)
                .single();
    }
}
