package rollbook.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.task.helper.CustomTask;
import com.github.kagkarlsson.scheduler.testhelper.ManualScheduler;
import com.github.kagkarlsson.scheduler.testhelper.SettableClock;
import com.github.kagkarlsson.scheduler.testhelper.TestHelper;
import java.time.Instant;
import java.util.UUID;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.testing.Fixtures;
import rollbook.testing.Jobs;
import rollbook.testing.PortalTest;

@PortalTest
class ForecastFailureTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Jobs jobs;

    @Autowired
    DataSource dataSource;

    @Autowired
    ForecastRuns runs;

    @Autowired
    ForecastRequests requests;

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

    @Test
    void aForecastThatFailsIsToldAndTriedAgainLaterWhileTheLastGoodOneStays() {
        ask();
        jobs.run();
        long good = runs.standing(id).newest().id();
        UUID broken = show.keptLeg("Broken");
        breakSupply(broken);
        Instant before = Instant.now();
        ask();
        jobs.run();

        ForecastRun.Standing standing = runs.standing(id);
        assertThat(standing.newest().id()).isEqualTo(good);
        assertThat(standing.outdated()).isTrue();
        Failure failure = standing.failure();
        assertThat(failure.since()).isBetween(before.minusSeconds(1), Instant.now());
        assertThat(failure.what()).contains("No holidays are known for QQ");
        assertThat(failure.nextTryAt())
                .isBetween(before.plusSeconds(59), Instant.now().plusSeconds(61));
        assertThat(scheduled()).as("it waits for its next try").isOne();

        jdbc.sql("delete from forecast_supply where leg_id = ?").param(broken).update();
        ask();
        jobs.run();
        assertThat(runs.standing(id).failure())
                .as("what is asked for doesn't wait any longer")
                .isNull();
        assertThat(runs.standing(id).newest().id()).isGreaterThan(good);
        assertThat(scheduled()).isZero();
    }

    @Test
    void eachFailureInARowWaitsTwiceAsLongUpToAnHourAndKeepsSinceWhen() {
        breakSupply(show.keptLeg("Broken"));
        // Nobody else's forecast is due then, and takes this one's turn.
        jobs.run();
        ask();
        Instant since = null;
        long[] minutes = {1, 2, 4, 8, 16, 32, 60, 60};
        SettableClock time = new SettableClock();
        ManualScheduler scheduler = TestHelper.createManualScheduler(dataSource, forecastTask)
                .clock(time)
                .build();
        for (int failed = 0; failed < minutes.length; failed++) {
            scheduler.setTime(Instant.now().plusSeconds(90_000));
            Instant before = Instant.now();
            scheduler.runAnyDueExecutions();
            Failure failure = runs.standing(id).failure();
            assertThat(failure.nextTryAt())
                    .as("after %d failures", failed + 1)
                    .isBetween(
                            before.plusSeconds(60 * minutes[failed] - 1),
                            Instant.now().plusSeconds(60 * minutes[failed] + 1));
            since = since == null ? failure.since() : since;
            assertThat(failure.since()).isEqualTo(since);
        }
    }

    /** A country that no calendar knows, as if it had been taken out of the library. */
    private void breakSupply(UUID leg) {
        show.supply(leg, 1000, 1, 3, 4, 100);
        jdbc.sql("update supplier_supplier set country = 'QQ' where production_id = ?")
                .param(show.production.id)
                .update();
    }

    private void ask() {
        requests.ask(id, Because.SCHEDULE);
    }

    private long scheduled() {
        return jdbc.sql("select count(*) from scheduled_tasks where task_name = 'forecast' and task_instance = ?")
                .param(id.toString())
                .query(Long.class)
                .single();
    }
}
