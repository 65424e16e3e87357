package rollbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.event.ApplicationEvents;
import org.springframework.test.context.event.RecordApplicationEvents;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.NotFoundException;
import rollbook.web.Refusal;

@PortalTest
@RecordApplicationEvents
class ScheduleTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    Schedule schedule;

    @Autowired
    DayStates states;

    @Autowired
    ShootingDays days;

    @Autowired
    JdbcClient jdbc;

    TestProduction production;
    Membership office;
    UUID unit;
    UUID camera;
    UUID format;

    @BeforeEach
    void makeProduction() {
        production = fixtures.production();
        office = production.as(Role.OFFICE);
        unit = production.unit("Main unit");
        camera = production.camera(unit, "A");
        format = production.format("Main format");
    }

    @Test
    void aWholeScheduleIsPlannedAtOnce() {
        enter(1, date(0), date(1), date(4));
        assertThat(days.list(production.id))
                .extracting(ShootingDay::number, ShootingDay::date, ShootingDay::state)
                .containsExactly(
                        tuple(1, date(0), DayState.PLANNED),
                        tuple(2, date(1), DayState.PLANNED),
                        tuple(3, date(4), DayState.PLANNED));
        assertThat(days.plannedMinutes(production.id))
                .hasSize(3)
                .allSatisfy(plan -> assertThat(plan.minutes()).isEqualByComparingTo("90"));
        assertThat(acts()).containsExactly("schedule.entered");
    }

    @Test
    void aUnitHasOneDayADateAndANumber() {
        enter(1, date(0), date(1));
        assertTaken("startDate", () -> enter(3, date(1), date(2)));
        assertTaken("firstNumber", () -> enter(2, date(2), date(3)));
        assertTaken("date", () -> schedule.add(office, unit, 9, date(0), "", List.of()));
        assertTaken("number", () -> schedule.add(office, unit, 2, date(9), "", List.of()));
        ShootingDay first = days.list(production.id).get(0);
        assertTaken("date", () -> schedule.change(office, first.id(), 1, date(1), "", List.of(), 0));
        assertThat(days.list(production.id)).hasSize(2);
        UUID second = production.unit("Second unit");
        schedule.add(office, second, 1, date(0), "", List.of());
        assertThat(days.list(production.id)).hasSize(3);
    }

    @Test
    void theSecondOfTwoChangesIsRefused() {
        UUID day = enter(1, date(0)).get(0);
        schedule.change(office, day, 1, date(2), "rain cover", plan("60"), 0);
        assertRefused(
                "schedule.refused.changed-meanwhile",
                () -> schedule.change(office, day, 1, date(3), "", plan("30"), 0));
        assertThat(days.get(production.id, day))
                .returns(date(2), ShootingDay::date)
                .returns("rain cover", ShootingDay::note);
        assertThat(days.plannedMinutes(production.id, day))
                .singleElement()
                .satisfies(plan -> assertThat(plan.minutes()).isEqualByComparingTo("60"));
    }

    @Test
    void aDayGoesFromPlannedThroughShootingToWrapped() {
        UUID day = enter(1, date(0)).get(0);
        assertRefused("schedule.refused.is.PLANNED", () -> states.wrap(office, day));
        states.start(office, day);
        assertRefused("schedule.refused.is.SHOOTING", () -> states.start(office, day));
        assertRefused("schedule.refused.is.SHOOTING", () -> states.cancel(office, day));
        states.wrap(office, day);
        assertRefused("schedule.refused.is.WRAPPED", () -> states.start(office, day));
        assertRefused("schedule.refused.closed", () -> schedule.change(office, day, 1, date(1), "", List.of(), 2));
        states.reopen(office, day, "two set-ups were left");
        assertThat(days.get(production.id, day).state()).isEqualTo(DayState.SHOOTING);
        states.stop(office, day);
        states.cancel(office, day);
        states.restore(office, day);
        assertThat(acts())
                .containsExactly(
                        "schedule.entered",
                        "day.started",
                        "day.wrapped",
                        "day.reopened",
                        "day.stopped",
                        "day.cancelled",
                        "day.restored");
        assertThat(jdbc.sql("select detail from audit_act where production_id = ? and action = 'day.reopened'")
                        .param(production.id)
                        .query(String.class)
                        .single())
                .contains("two set-ups were left");
    }

    @Test
    void everyChangeIsAnnouncedOnce(ApplicationEvents events) {
        UUID day = enter(1, date(0)).get(0);
        UUID second = schedule.add(office, unit, 2, date(1), "", List.of());
        schedule.change(office, day, 1, date(0), "note", plan("10"), 0);
        List<ShootingDay> seen = days.ofUnit(production.id, unit);
        schedule.slip(office, Slip.by(1, seen.get(0), seen, UnitDays.weekdays(seen, Set.of()), Set.of()));
        schedule.remove(office, second);
        states.start(office, day);
        states.wrap(office, day);
        assertRefused("schedule.refused.is.WRAPPED", () -> states.wrap(office, day));
        assertThat(events.stream(ScheduleChanged.class))
                .filteredOn(event -> event.productionId().equals(production.id))
                .hasSize(7);
    }

    @Test
    void aUnitShootsOneDayAtATime() {
        List<UUID> both = enter(1, date(0), date(1));
        states.start(office, both.get(0));
        assertRefused("schedule.refused.other-shooting", () -> states.start(office, both.get(1)));
        states.wrap(office, both.get(0));
        states.start(office, both.get(1));
        assertRefused("schedule.refused.other-shooting", () -> states.reopen(office, both.get(0), "why not"));
        UUID second = production.unit("Second unit");
        UUID theirs = schedule.add(office, second, 1, date(0), "", List.of());
        states.start(office, theirs);
        assertThat(days.get(production.id, theirs).state()).isEqualTo(DayState.SHOOTING);
    }

    @Test
    void aSlipIsDoneWholeOrNotAtAll() {
        List<UUID> ids = enter(1, date(0), date(1), date(2));
        List<ShootingDay> seen = days.ofUnit(production.id, unit);
        Slip slip = Slip.by(1, seen.get(0), seen, UnitDays.weekdays(seen, Set.of()), Set.of());
        schedule.change(office, ids.get(2), 3, date(2), "changed meanwhile", List.of(), 0);
        assertRefused("schedule.refused.changed-meanwhile", () -> schedule.slip(office, slip));
        assertThat(days.list(production.id)).extracting(ShootingDay::date).containsExactly(date(0), date(1), date(2));
        List<ShootingDay> now = days.ofUnit(production.id, unit);
        schedule.slip(office, Slip.by(1, now.get(0), now, UnitDays.weekdays(now, Set.of()), Set.of()));
        // Monday to Wednesday are the unit's weekdays: Wednesday goes on to the next Monday.
        assertThat(days.list(production.id)).extracting(ShootingDay::date).containsExactly(date(1), date(2), date(7));
        assertThat(days.list(production.id)).extracting(ShootingDay::number).containsExactly(1, 2, 3);
    }

    @Test
    void aDayGivenAwayMeanwhileStopsTheSlip() {
        enter(1, date(0));
        List<ShootingDay> seen = days.ofUnit(production.id, unit);
        Slip slip = Slip.to(date(1), seen.get(0), seen, Set.of(date(0).getDayOfWeek()), Set.of());
        schedule.add(office, unit, 2, date(1), "", List.of());
        assertRefused("schedule.refused.changed-meanwhile", () -> schedule.slip(office, slip));
    }

    @Test
    void aDayWithRollsStays() {
        UUID day = enter(1, date(0)).get(0);
        UUID card = production.item("CARD-001", "CARD", production.place("Cart", false), null);
        jdbc.sql("""
                        insert into offload_roll (id, production_id, code, camera_id, day_id, card_id, format_id, loaded_at, loaded_by)
                        values (?, ?, 'A001', ?, ?, ?, ?, now(), ?)
                        """)
                .params(UUID.randomUUID(), production.id, camera, day, card, format, office.personId())
                .update();
        assertRefused("schedule.refused.has-rolls", () -> schedule.remove(office, day));
        UUID free = schedule.add(office, unit, 2, date(1), "", plan("10"));
        schedule.remove(office, free);
        assertThat(days.list(production.id)).extracting(ShootingDay::id).containsExactly(day);
        states.start(office, day);
        assertRefused("schedule.refused.remove-state", () -> schedule.remove(office, day));
    }

    @Test
    void nothingCrossesProductions() {
        UUID day = enter(1, date(0)).get(0);
        TestProduction other = fixtures.production();
        Membership stranger = other.as(Role.ADMINISTRATOR);
        assertUnknown(() -> states.start(stranger, day));
        assertUnknown(() -> schedule.remove(stranger, day));
        assertUnknown(() -> schedule.change(stranger, day, 1, date(1), "", List.of(), 0));
        assertUnknown(() -> schedule.add(stranger, unit, 1, date(1), "", List.of()));
        UUID theirUnit = other.unit("Main unit");
        assertUnknown(() -> schedule.add(stranger, theirUnit, 1, date(1), "", plan("10")));
        assertThat(days.list(other.id)).isEmpty();
    }

    private List<UUID> enter(int firstNumber, LocalDate... dates) {
        return schedule.enter(office, new NewSchedule(unit, firstNumber, List.of(dates), plan("90")));
    }

    private List<CameraPlan> plan(String minutes) {
        return List.of(new CameraPlan(camera, format, new BigDecimal(minutes)));
    }

    private static LocalDate date(int offset) {
        return TestProduction.FIRST_DATE.plusDays(offset);
    }

    private List<String> acts() {
        return jdbc.sql(
                        "select action from audit_act where production_id = ? and action <> 'production.created' order by id")
                .param(production.id)
                .query(String.class)
                .list();
    }

    private static void assertTaken(String field, ThrowingCallable call) {
        assertThatThrownBy(call)
                .isInstanceOfSatisfying(
                        DayTaken.class, taken -> assertThat(taken.field()).isEqualTo(field));
    }

    private static void assertRefused(String key, ThrowingCallable call) {
        assertThatThrownBy(call)
                .isInstanceOfSatisfying(
                        Refusal.class, refusal -> assertThat(refusal.key()).isEqualTo(key));
    }

    private static void assertUnknown(ThrowingCallable call) {
        assertThatThrownBy(call).isInstanceOf(NotFoundException.class);
    }
}
