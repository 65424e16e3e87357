package rollbook.hire;

import java.sql.Date;
import java.sql.Timestamp;
import java.sql.Types;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import rollbook.web.Refusal;

/** How hires ended and what they came to: kept when an item leaves, and once more when what that rests on is corrected. */
@Repository
class HireEnds {
    private final JdbcClient jdbc;
    private final Clock clock;

    HireEnds(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** What counts, by the item. */
    Map<UUID, HireEnd> of(UUID productionId) {
        return jdbc.sql("""
                        select distinct on (e.item_id) e.item_id, e.number, e.agreement_id, e.started_on, e.due_on, e.ended_on,
                               e.weeks, e.hire_minor_units, e.late_minor_units, e.note, e.entered_at,
                               p.display_name as entered_by
                        from hire_end e join people_person p on p.id = e.entered_by
                        where e.production_id = ? order by e.item_id, e.number desc
                        """).param(productionId).query(HireEnd.class).list().stream()
                .collect(Collectors.toMap(HireEnd::itemId, Function.identity()));
    }

    /** All that was entered about an item, newest first. */
    List<HireEnd> history(UUID productionId, UUID itemId) {
        return jdbc.sql("""
                        select e.item_id, e.number, e.agreement_id, e.started_on, e.due_on, e.ended_on,
                               e.weeks, e.hire_minor_units, e.late_minor_units, e.note, e.entered_at,
                               p.display_name as entered_by
                        from hire_end e join people_person p on p.id = e.entered_by
                        where e.production_id = ? and e.item_id = ? order by e.number desc
                        """).params(productionId, itemId).query(HireEnd.class).list();
    }

    /**
     * Keeps what the hire of an item came to; nothing if nobody knows what a week costs.
     *
     * @param seen how many entries about its end there were
     * @throws Refusal if somebody else made another one meanwhile
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void keep(UUID productionId, Hired hired, LocalDate on, int seen, UUID personId, String note) {
        hired.ifReturnedOn(on).ifPresent(cost -> insert(productionId, hired, on, cost, seen, personId, note));
    }

    private void insert(
            UUID productionId, Hired hired, LocalDate on, HireCost cost, int seen, UUID personId, String note) {
        LocalDate due = hired.dueOn();
        try {
            jdbc.sql("""
                            insert into hire_end (item_id, number, production_id, agreement_id, entered_at, entered_by, started_on,
                                due_on, ended_on, weeks, hire_minor_units, late_minor_units, note)
                            values (:item, :number, :production, :agreement, :at, :by, :started, :due, :ended, :weeks, :hire,
                                :late, :note)
                            """)
                    .param("item", hired.item().id())
                    .param("number", seen + 1)
                    .param("production", productionId)
                    .param(
                            "agreement",
                            hired.agreement() == null ? null : hired.agreement().id(),
                            Types.OTHER)
                    .param("at", Timestamp.from(clock.instant()))
                    .param("by", personId)
                    .param("started", Date.valueOf(hired.startedOn()))
                    .param("due", due == null ? null : Date.valueOf(due), Types.DATE)
                    .param("ended", Date.valueOf(on))
                    .param("weeks", cost.weeks())
                    .param("hire", cost.hireMinorUnits())
                    .param("late", cost.lateMinorUnits())
                    .param("note", note)
                    .update();
        } catch (DuplicateKeyException taken) {
            throw new Refusal("hire.refused.changed", hired.item().code());
        }
    }
}
