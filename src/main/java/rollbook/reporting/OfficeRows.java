package rollbook.reporting;

import java.sql.Date;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** What the office looks at on today's page besides storage, in one statement. */
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
        PROPOSAL
    }

    /**
     * @param blank cards of them that are good and blank
     * @param date on which an item is due back, or a proposal is needed
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

    /** @param dueBefore hired items that go back before it */
    List<Row> of(UUID productionId, LocalDate dueBefore) {
        return jdbc.sql("""
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
                        order by about, date, name
                        """)
                .param("production", productionId)
                .param("before", Date.valueOf(dueBefore))
                .query(Row.class)
                .list();
    }
}
