package rollbook.schedule;

import java.sql.Date;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.production.Membership;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

/** Changes the shooting schedule of a production. What a day is on its way through is in {@link DayStates}. */
@Service
public class Schedule {
    private final JdbcClient jdbc;
    private final ScheduleRows rows;
    private final ShootingDays days;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;

    Schedule(
            JdbcClient jdbc, ScheduleRows rows, ShootingDays days, AuditTrail trail, ApplicationEventPublisher events) {
        this.jdbc = jdbc;
        this.rows = rows;
        this.days = days;
        this.trail = trail;
        this.events = events;
    }

    /**
     * Enters a whole run of planned days at once.
     *
     * @return the ids of the days in their order
     * @throws NotFoundException if the unit, a camera or a format is not this production's
     * @throws DayTaken if the unit has a day of that date or number
     */
    @Transactional
    public List<UUID> enter(Membership by, NewSchedule schedule) {
        List<UUID> ids = rows.insert(by.productionId(), schedule, "");
        rows.savePlan(by.productionId(), ids, schedule.plan());
        rows.checkKeys(schedule.dates().size() > 1);
        trail.add(by.act(
                "schedule.entered",
                "schedule",
                unitName(by, schedule.unitId()),
                "days %d to %d, %s to %s"
                        .formatted(
                                schedule.firstNumber(),
                                schedule.firstNumber() + ids.size() - 1,
                                schedule.dates().get(0),
                                schedule.dates().get(ids.size() - 1))));
        events.publishEvent(new ScheduleChanged(by.productionId()));
        return ids;
    }

    /**
     * Adds one planned day.
     *
     * @throws NotFoundException if the unit, a camera or a format is not this production's
     * @throws DayTaken if the unit has a day of that date or number
     */
    @Transactional
    public UUID add(Membership by, UUID unitId, int number, LocalDate date, String note, List<CameraPlan> plan) {
        UUID id = rows.insert(by.productionId(), new NewSchedule(unitId, number, List.of(date), plan), note)
                .get(0);
        rows.savePlan(by.productionId(), List.of(id), plan);
        rows.checkKeys(false);
        changed(by, "day.added", days.get(by.productionId(), id), date.toString());
        return id;
    }

    /**
     * Changes the number, date, note and planned minutes of a day that is planned or shooting.
     *
     * @throws Refusal if somebody else changed it meanwhile, or it is wrapped or cancelled
     * @throws DayTaken if the unit has another day of that date or number
     */
    @Transactional
    public void change(
            Membership by, UUID dayId, int number, LocalDate date, String note, List<CameraPlan> plan, int version) {
        ShootingDay day = days.get(by.productionId(), dayId);
        int updated = jdbc.sql("""
                        update schedule_day set number = ?, date = ?, note = ?, version = version + 1
                        where production_id = ? and id = ? and version = ? and state in ('PLANNED', 'SHOOTING')
                        """)
                .params(number, Date.valueOf(date), note, by.productionId(), dayId, version)
                .update();
        if (updated == 0) {
            throw day.state().open()
                    ? new Refusal("schedule.refused.changed-meanwhile", day.number())
                    : new Refusal("schedule.refused.closed", day.number());
        }
        jdbc.sql("delete from schedule_plan where day_id = ?").param(dayId).update();
        rows.savePlan(by.productionId(), List.of(dayId), plan);
        rows.checkKeys(false);
        changed(by, "day.changed", day, day.date().equals(date) ? "" : day.date() + " to " + date);
    }

    /**
     * Moves days as a slip says.
     *
     * @throws Refusal if one of them was changed, or another day was put on one of the dates, since the slip was made
     */
    @Transactional
    public void slip(Membership by, Slip slip) {
        List<Slip.Move> moves = slip.changes();
        int moved = rows.move(by.productionId(), moves);
        ShootingDay slipped = slip.moves().get(0).day();
        if (moved != moves.size()) {
            throw new Refusal("schedule.refused.changed-meanwhile", slipped.number());
        }
        try {
            rows.checkKeys(false);
        } catch (DayTaken e) {
            throw new Refusal("schedule.refused.changed-meanwhile", slipped.number());
        }
        changed(
                by,
                "day.slipped",
                slipped,
                "%s to %s, %d days"
                        .formatted(slipped.date(), slip.moves().get(0).to(), moved));
    }

    /**
     * Moves a planned day, and every later planned one of its unit, by so many of the unit's shooting dates.
     *
     * @param weekdays on which the unit shoots
     */
    @Transactional
    public void slip(Membership by, UUID dayId, int steps, Set<DayOfWeek> weekdays) {
        ShootingDay day = days.get(by.productionId(), dayId);
        List<ShootingDay> ofUnit = days.ofUnit(by.productionId(), day.unitId());
        slip(by, Slip.by(steps, day, ofUnit, weekdays, Set.of()));
    }

    /** @throws Refusal if the day is shooting or wrapped, or a roll belongs to it */
    @Transactional
    public void remove(Membership by, UUID dayId) {
        ShootingDay day = days.get(by.productionId(), dayId);
        try {
            int removed = jdbc.sql("""
                            delete from schedule_day where production_id = ? and id = ? and state in ('PLANNED', 'CANCELLED')
                            """).params(by.productionId(), dayId).update();
            if (removed == 0) {
                throw new Refusal("schedule.refused.remove-state", day.number());
            }
        } catch (DataIntegrityViolationException e) {
            throw new Refusal("schedule.refused.has-rolls", day.number());
        }
        changed(by, "day.removed", day, day.date().toString());
    }

    private String unitName(Membership by, UUID unitId) {
        return jdbc.sql("select name from production_unit where production_id = ? and id = ?")
                .params(by.productionId(), unitId)
                .query(String.class)
                .single();
    }

    private void changed(Membership by, String action, ShootingDay day, String detail) {
        trail.add(
                by.act(action, "day", day.code(), detail.isEmpty() ? day.unitName() : day.unitName() + ", " + detail));
        events.publishEvent(new ScheduleChanged(by.productionId()));
    }
}
