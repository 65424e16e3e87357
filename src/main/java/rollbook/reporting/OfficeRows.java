package rollbook.reporting;

import java.sql.Date;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** What stands on today's page of media, orders and shipments, in one statement. */
@Repository
class OfficeRows {
    private final JdbcClient jdbc;

    OfficeRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** What a row is about. */
    enum About {
        /** Items of a kind that are with the production; the name is the kind's. */
        MEDIA,
        /** A hired item that goes back soon or should have; the name is its code. */
        DUE_BACK,
        /** A proposal that waits for an answer; the name is its scenario's. */
        PROPOSAL,
        /** An order that waits to be approved; the name is its number. */
        TO_APPROVE,
        /** An order of which something was to come by now and hasn't; the name is its number. */
        AWAITED,
        /** A shipment that is under way; the name is its number. */
        UNDER_WAY
    }

    /**
     * @param blank cards of them that are good and blank
     * @param date on which an item is due back, a proposal is needed, an order or a shipment is expected; null if nobody said
     * @param costMinorUnits of a proposal, or null if it isn't known
     */
    record Row(
            About about,
            String name,
            long count,
            long blank,
            @Nullable UUID id,
            @Nullable LocalDate date,
            @Nullable Long costMinorUnits) {}

    /**
     * @param today in the production's zone
     * @param dueBefore hired items that go back before it
     */
    List<Row> of(UUID productionId, LocalDate today, LocalDate dueBefore) {
        return jdbc.sql("""
                        with step as (
                            select s.* from purchase_step s
                            join purchase_order o on o.id = s.order_id
                            where o.production_id = :production and not exists (
                                select 1 from purchase_step b
                                where b.order_id = s.order_id and b.taken_back_step = s.number)
                        )
                        select 'MEDIA' as about, kind as name, count(*) as count,
                               count(*) filter (where condition = 'GOOD' and card_state = 'BLANK') as blank,
                               null::uuid as id, null::date as date, null::bigint as cost_minor_units
                        from inventory_item
                        where production_id = :production and condition not in ('RETURNED', 'RETIRED') group by kind
                        union all
                        select 'DUE_BACK', code, 1, 0, id, hired_until, null from inventory_item
                        where production_id = :production and condition <> 'RETURNED' and hired_until < :before
                        union all
                        select 'PROPOSAL', scenario_name, 1, 0, id, needed_by, cost_minor_units from scenario_proposal
                        where production_id = :production and state = 'PROPOSED'
                        union all
                        select 'TO_APPROVE', o.number::text, 1, 0, o.id, o.needed_by, null from purchase_order o
                        where o.production_id = :production and not exists (
                            select 1 from step s
                            where s.order_id = o.id and s.step in ('APPROVED', 'DECLINED', 'PLACED', 'CANCELLED'))
                        union all
                        select 'AWAITED', o.number::text, 1, 0, o.id, e.expected_on, null from purchase_order o
                        cross join lateral (
                            select s.expected_on from step s
                            where s.order_id = o.id and s.step in ('PLACED', 'PROMISED')
                            order by s.number desc limit 1) e
                        where o.production_id = :production and e.expected_on < :today
                          and not exists (
                            select 1 from step s where s.order_id = o.id and s.step in ('CLOSED', 'CANCELLED'))
                          and exists (
                            select 1 from purchase_line l
                            join purchase_line_arrival a on a.line_id = l.id
                            where l.order_id = o.id and not l.removed and l.items > a.came + a.credited)
                        union all
                        select 'UNDER_WAY', s.number::text, 1, 0, s.id,
                               (s.expected_by at time zone p.time_zone)::date, null
                        from shipment_shipment s
                        join production_production p on p.id = s.production_id
                        where s.production_id = :production and s.state = 'SENT' and exists (
                            select 1 from shipment_item i
                            where i.shipment_id = s.id and i.state in ('UNDER_WAY', 'MISSING'))
                        order by about, date, name
                        """)
                .param("production", productionId)
                .param("today", Date.valueOf(today))
                .param("before", Date.valueOf(dueBefore))
                .query(Row.class)
                .list();
    }
}
