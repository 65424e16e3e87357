package rollbook.schedule;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import rollbook.audit.AuditTrail;
import rollbook.format.NamedFormat;
import rollbook.format.RecordingFormats;
import rollbook.production.Membership;
import rollbook.web.Refusal;

/** Takes shooting days from one state to the next; each step is refused from any state but its own. */
@Service
public class DayStates {
    private final JdbcClient jdbc;
    private final ShootingDays days;
    private final RecordingFormats formats;
    private final AuditTrail trail;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    DayStates(
            JdbcClient jdbc,
            ShootingDays days,
            RecordingFormats formats,
            AuditTrail trail,
            ApplicationEventPublisher events,
            Clock clock) {
        this.jdbc = jdbc;
        this.days = days;
        this.formats = formats;
        this.trail = trail;
        this.events = events;
        this.clock = clock;
    }

    /**
     * Starts the day and keeps its plan as it is now.
     *
     * @throws Refusal if the day isn't planned, or its unit is shooting another one
     */
    @Transactional
    public void start(Membership by, UUID dayId) {
        change(by, dayId, DayState.PLANNED, DayState.SHOOTING, "day.started", "");
        keepPlan(by.productionId(), dayId);
    }

    private void keepPlan(UUID productionId, UUID dayId) {
        Map<UUID, NamedFormat> byId =
                formats.list(productionId).stream().collect(Collectors.toMap(NamedFormat::id, Function.identity()));
        DayTotals plan =
                DayTotals.byDay(days.plannedMinutes(productionId, dayId), byId).getOrDefault(dayId, DayTotals.NONE);
        jdbc.sql("""
                        insert into schedule_start (production_id, day_id, started_at, planned_minutes, planned_bytes)
                        values (?, ?, ?, ?, ?)
                        """)
                .params(
                        productionId,
                        dayId,
                        Timestamp.from(clock.instant()),
                        plan.minutes(),
                        plan.bytes().longValueExact())
                .update();
    }

    /** Takes back a start that was a mistake: the day is planned again. */
    @Transactional
    public void stop(Membership by, UUID dayId) {
        change(by, dayId, DayState.SHOOTING, DayState.PLANNED, "day.stopped", "");
    }

    /** @throws Refusal if the day isn't shooting */
    @Transactional
    public void wrap(Membership by, UUID dayId) {
        change(by, dayId, DayState.SHOOTING, DayState.WRAPPED, "day.wrapped", "");
        events.publishEvent(new DayWrapped(by.productionId(), dayId));
    }

    /**
     * Opens a wrapped day again.
     *
     * @param reason stays on the record
     * @throws Refusal if the day isn't wrapped, or its unit is shooting another one
     */
    @Transactional
    public void reopen(Membership by, UUID dayId, String reason) {
        change(by, dayId, DayState.WRAPPED, DayState.SHOOTING, "day.reopened", ", " + reason);
    }

    /** The day will not be shot. Its number and date stay taken. */
    @Transactional
    public void cancel(Membership by, UUID dayId) {
        change(by, dayId, DayState.PLANNED, DayState.CANCELLED, "day.cancelled", "");
    }

    /** A cancelled day is planned again. */
    @Transactional
    public void restore(Membership by, UUID dayId) {
        change(by, dayId, DayState.CANCELLED, DayState.PLANNED, "day.restored", "");
    }

    private void change(Membership by, UUID dayId, DayState from, DayState to, String action, String detail) {
        ShootingDay day = days.get(by.productionId(), dayId);
        try {
            int changed = jdbc.sql("""
                            update schedule_day set state = ?, version = version + 1
                            where production_id = ? and id = ? and state = ?
                            """)
                    .params(to.name(), by.productionId(), dayId, from.name())
                    .update();
            if (changed == 0) {
                DayState now = days.get(by.productionId(), dayId).state();
                throw new Refusal("schedule.refused.is." + now, day.number());
            }
        } catch (DuplicateKeyException e) {
            throw new Refusal("schedule.refused.other-shooting", day.number(), day.unitName());
        }
        trail.add(by.act(action, "day", day.code(), day.unitName() + detail));
        events.publishEvent(new ScheduleChanged(by.productionId()));
    }
}
