package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.github.kagkarlsson.scheduler.task.CompletionHandler;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.helper.CustomTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.testhelper.ManualScheduler;
import com.github.kagkarlsson.scheduler.testhelper.SettableClock;
import com.github.kagkarlsson.scheduler.testhelper.TestHelper;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.stream.Stream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.format.FormatChanged;
import rollbook.inventory.MediaItemChanged;
import rollbook.offload.RollChanged;
import rollbook.production.CopyPlanChanged;
import rollbook.production.ProductionChanged;
import rollbook.production.Role;
import rollbook.purchase.Orders;
import rollbook.purchase.Receipts;
import rollbook.purchase.TestOrders;
import rollbook.schedule.ScheduleChanged;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;

@PortalTest
class ForecastJobTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Jobs jobs;

    @Autowired
    DataSource dataSource;

    @Autowired
    ApplicationEventPublisher events;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    ForecastRuns runs;

    @Autowired
    ForecastJob job;

    @Autowired
    ForecastInputs inputs;

    @Autowired
    Orders orders;

    @Autowired
    Receipts receipts;

    @Autowired
    CustomTask<Void> forecastTask;

    private StorageShow show;
    private UUID id;

    @BeforeEach
    void makeShow() {
        show = new StorageShow(fixtures, jdbc);
        id = show.production.id;
        show.day(1, -1, "WRAPPED", 100);
        show.day(2, 1, "PLANNED", 100);
        show.drive("DRIVE-1", show.keptLeg("Shuttle"), 100);
    }

    static Stream<Arguments> events() {
        UUID any = UUID.randomUUID();
        return Stream.of(
                event(ScheduleChanged::new, Because.SCHEDULE),
                event(FormatChanged::new, Because.FORMATS),
                event(production -> new RollChanged(production, any), Because.ROLLS),
                event(production -> new MediaItemChanged(production, any), Because.MEDIA),
                event(CopyPlanChanged::new, Because.COPY_PLAN),
                event(ProductionChanged::new, Because.PRODUCTION));
    }

    private static Arguments event(Function<UUID, Object> ofProduction, Because because) {
        return Arguments.of(ofProduction, because);
    }

    @ParameterizedTest
    @MethodSource("events")
    void computesAForecastAfterEachEventThatMayChangeIt(Function<UUID, Object> ofProduction, Because because) {
        Object event = ofProduction.apply(id);
        transaction.executeWithoutResult(status -> events.publishEvent(event));
        assertThat(kept()).as("nothing is computed in the event's transaction").isZero();
        assertThat(runs.standing(id).outdated()).isTrue();

        jobs.run();

        assertThat(kept()).isOne();
        ForecastRun run = newest();
        assertThat(run.because()).containsExactly(because);
        assertThat(run.inputs().days()).hasSize(2);
        assertThat(runs.standing(id).outdated()).isFalse();
        assertThat(scheduled()).isZero();
    }

    @Test
    void anEventOfATransactionThatRollsBackAsksForNothing() {
        transaction.executeWithoutResult(status -> {
            events.publishEvent(new ScheduleChanged(id));
            status.setRollbackOnly();
        });

        assertThat(scheduled()).isZero();
        assertThat(runs.standing(id)).isEqualTo(ForecastRun.Standing.NONE);
    }

    @Test
    void theEventsOfOneTransactionAskOnce() {
        transaction.executeWithoutResult(status -> {
            for (int i = 0; i < 20; i++) {
                events.publishEvent(new MediaItemChanged(id, UUID.randomUUID()));
            }
            events.publishEvent(new CopyPlanChanged(id));
        });

        assertThat(runs.asked(id).number()).isOne();
        jobs.run();
        assertThat(newest().because()).containsExactly(Because.MEDIA, Because.COPY_PLAN);
    }

    @Test
    void fromWhatIsKeptAsItsInputsTheSameForecastIsMadeAgain() {
        UUID tape = show.leg("Tape", null, 60);
        UUID item = show.supply(tape, 18_000, 5, 3, 4, 7_250);
        jdbc.sql("update supplier_supplier set country = 'PT' where production_id = ?")
                .param(id)
                .update();
        show.encoded(show.roll(show.day(3, -2, "WRAPPED", 3), 123_456_789_012_345L, 3), 61_234_567_890_123L);
        show.roll(show.day(4, -3, "WRAPPED", 10), null, 12.25);
        new TestOrders(orders, receipts, show.production.as(Role.OFFICE))
                .placed(item, tape, 5, show.date(-1), show.date(4));
        jdbc.sql("insert into production_holiday (production_id, date, name) values (?, current_date + 3, 'Holiday')")
                .param(id)
                .update();
        ask();
        jobs.run();

        ForecastRun run = newest();
        assertThat(run.inputs().offers()).hasSize(1);
        assertThat(run.inputs().shotDays()).hasSize(3);
        assertThat(run.results()).isEqualTo(SimulatedForecast.of(run.inputs()));
        assertThat(run.inputs()).isEqualTo(inputs.gather(id));
    }

    @Test
    void earlierForecastsOfAnotherMethodTellTheirRoomAndAreNotTakenForTheNewest() {
        jdbc.sql("""
                        insert into forecast_run (production_id, computed_at, today, because, method_id, inputs, results)
                        values (?, now(), ?, '{}', 'simple-ratio-1', '{"days": []}',
                                '{"legs": [{"legId": "00000000-0000-0000-0000-000000000007", "roomNowBytes": 4321}]}')
                        """).params(id, java.sql.Date.valueOf(show.date(-1))).update();
        jdbc.sql("insert into forecast_state (production_id, asked, answered, because) values (?, 1, 1, '{}')")
                .param(id)
                .update();

        assertThat(newest()).isNull();
        assertThat(runs.roomOnPastDates(id, show.today).get(new UUID(0, 7)))
                .containsExactly(java.util.Map.entry(show.date(-1), 4321L));
        job.startNewDays(show.date(0)
                .atTime(LocalTime.of(4, 0))
                .atZone(ZoneId.of("Europe/Lisbon"))
                .toInstant());
        assertThat(runs.standing(id).outdated())
                .as("one of today's method is asked for")
                .isTrue();
    }

    @Test
    void aForecastThatSaysTheSameIsNotKeptAgain() {
        ask();
        jobs.run();
        Instant first = runs.standing(id).checkedAt();
        ask();
        jobs.run();

        assertThat(kept()).isOne();
        assertThat(runs.standing(id).checkedAt()).isAfter(first);
        assertThat(newest().computedAt()).isEqualTo(first);

        show.drive("DRIVE-2", newest().inputs().legs().get(0).id(), 100);
        ask();
        jobs.run();
        assertThat(kept()).isEqualTo(2);
    }

    @Test
    void whatChangesWhileAForecastIsComputedIsInTheNext() {
        ask();
        scheduler(forecastTaskThatIsDisturbedBy(() -> {
                    show.day(3, 2, "PLANNED", 50);
                    ask();
                }))
                .runAnyDueExecutions();

        assertThat(newest().inputs().days())
                .as("the first run had read its inputs")
                .hasSize(2);
        assertThat(scheduled()).as("the job goes on").isOne();
        assertThat(runs.standing(id).outdated()).isTrue();

        jobs.run();
        assertThat(newest().inputs().days()).hasSize(3);
        assertThat(scheduled()).isZero();
        assertThat(runs.standing(id).outdated()).isFalse();
    }

    /** Something happens after the forecast was computed and before its job has ended. */
    private Task<Void> forecastTaskThatIsDisturbedBy(Runnable event) {
        return Tasks.custom(ForecastRequests.TASK, Void.class).execute((instance, context) -> {
            CompletionHandler<Void> end = forecastTask.execute(instance, context);
            if (instance.getId().equals(id.toString())) {
                event.run();
            }
            return end;
        });
    }

    private ManualScheduler scheduler(Task<Void> task) {
        ManualScheduler scheduler = TestHelper.createManualScheduler(dataSource, task)
                .clock(new SettableClock())
                .build();
        scheduler.setTime(Instant.now().plusSeconds(2));
        return scheduler;
    }

    @Test
    void manyAtOnceAskWhileJobsRunAndNoneIsLost() throws Exception {
        ExecutorService people = Executors.newFixedThreadPool(4);
        List<Future<?>> asking = new ArrayList<>();
        for (int person = 0; person < 4; person++) {
            asking.add(people.submit(() -> {
                for (int i = 0; i < 25; i++) {
                    ask();
                }
            }));
        }
        people.shutdown();
        while (!people.isTerminated()) {
            jobs.run();
        }
        assertThat(people.awaitTermination(1, TimeUnit.MINUTES)).isTrue();
        for (Future<?> asked : asking) {
            asked.get();
        }
        jobs.run();

        assertThat(runs.asked(id).number()).isEqualTo(100);
        assertThat(runs.standing(id).outdated()).isFalse();
        assertThat(scheduled()).isZero();
    }

    @Test
    void keptForecastsAreNeverChangedOrDeleted() {
        ask();
        jobs.run();

        assertThatThrownBy(() -> jdbc.sql("update forecast_run set results = '{}' where production_id = ?")
                        .param(id)
                        .update())
                .isInstanceOf(DataAccessException.class)
                .hasMessageContaining("never changed or deleted");
        assertThatThrownBy(() -> jdbc.sql("delete from forecast_run where production_id = ?")
                        .param(id)
                        .update())
                .isInstanceOf(DataAccessException.class)
                .hasMessageContaining("never changed or deleted");
    }

    @Test
    void aNewDayAsksForAForecastFromThreeInItsOwnNightOn() {
        ask();
        jobs.run();
        ZoneId lisbon = ZoneId.of("Europe/Lisbon");
        Instant threeTomorrow =
                show.date(1).atTime(LocalTime.of(3, 0)).atZone(lisbon).toInstant();

        job.startNewDays(
                show.date(0).atTime(LocalTime.of(23, 59)).atZone(lisbon).toInstant());
        job.startNewDays(threeTomorrow.minusSeconds(1));
        assertThat(runs.standing(id).outdated()).isFalse();

        job.startNewDays(threeTomorrow);
        assertThat(runs.standing(id).outdated()).isTrue();
        assertThat(runs.asked(id).because()).containsExactly(Because.NEW_DAY);
    }

    @Test
    void aProductionWithDaysAndLegsThatHasNoForecastGetsOneThatNight() {
        job.startNewDays(show.date(0)
                .atTime(LocalTime.of(4, 0))
                .atZone(ZoneId.of("Europe/Lisbon"))
                .toInstant());

        assertThat(runs.standing(id).outdated()).isTrue();
    }

    private void ask() {
        transaction.executeWithoutResult(status -> events.publishEvent(new ScheduleChanged(id)));
    }

    private ForecastRun newest() {
        return runs.standing(id).newest();
    }

    private long kept() {
        return jdbc.sql("select count(*) from forecast_run where production_id = ?")
                .param(id)
                .query(Long.class)
                .single();
    }

    private long scheduled() {
        return jdbc.sql("select count(*) from scheduled_tasks where task_name = 'forecast' and task_instance = ?")
                .param(id.toString())
                .query(Long.class)
                .single();
    }
}
