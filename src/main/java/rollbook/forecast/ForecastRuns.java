package rollbook.forecast;

import java.sql.Array;
import java.sql.Date;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** The forecasts that were kept, and which are asked for. */
@Repository
class ForecastRuns {
    private final JdbcClient jdbc;
    private final Clock clock;

    ForecastRuns(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** How often a forecast was asked for so far, and why since the last one. */
    record Asked(long number, Set<Because> because) {}

    /**
     * Notes that a forecast is wanted, and keeps others from asking and from finishing until the transaction ends.
     *
     * @return whether the last one failed and waits to be tried again
     */
    boolean ask(UUID productionId, Set<Because> because) {
        return jdbc.sql("""
                        insert into forecast_state as s (production_id, asked, because) values (:production, 1, :because)
                        on conflict (production_id) do update set asked = s.asked + 1,
                            because = (select array_agg(distinct b) from unnest(s.because || excluded.because) b)
                        returning next_try_at is not null
                        """)
                .param("production", productionId)
                .param("because", names(because))
                .query(Boolean.class)
                .single();
    }

    Asked asked(UUID productionId) {
        return jdbc.sql("select asked, because from forecast_state where production_id = ?")
                .param(productionId)
                .query((row, number) -> new Asked(row.getLong("asked"), because(row)))
                .optional()
                .orElse(new Asked(0, Set.of()));
    }

    /**
     * Adds the forecast, unless the newest was made the same way from the same inputs.
     *
     * @return the number of the run that says it
     */
    long keep(UUID productionId, Asked asked, ForecastInput inputs, StorageForecast results) {
        Timestamp now = Timestamp.from(clock.instant());
        // Locks the state's row, so that the newest run stays the newest until this transaction ends.
        jdbc.sql("""
                        insert into forecast_state as s (production_id, asked, answered, because, computed_at)
                        values (:production, :number, :number, '{}', :now)
                        on conflict (production_id) do update
                            set answered = greatest(s.answered, :number), computed_at = :now,
                                failing_since = null, failure = null, next_try_at = null
                        """)
                .param("production", productionId)
                .param("number", asked.number())
                .param("now", now)
                .update();
        return jdbc.sql("""
                        with kept as (
                        insert into forecast_run (production_id, computed_at, today, because, method_id, inputs, results)
                        select :production, :now, :today, :because, :method, :inputs::jsonb, :results::jsonb
                        where not exists (
                            select 1 from (select method_id, inputs from forecast_run
                                           where production_id = :production order by id desc limit 1) newest
                            where newest.method_id = :method and newest.inputs = :inputs::jsonb)
                        returning id)
                        select coalesce((select id from kept),
                            (select max(id) from forecast_run where production_id = :production))
                        """)
                .param("production", productionId)
                .param("now", now)
                .param("today", Date.valueOf(results.today()))
                .param("because", names(asked.because()))
                .param("method", results.methodId())
                .param("inputs", ForecastJson.write(inputs))
                .param("results", ForecastJson.write(results))
                .query(Long.class)
                .single();
    }

    /** Keeps that a forecast failed, and since when none succeeds. */
    void fail(UUID productionId, String what, Instant nextTryAt) {
        jdbc.sql("""
                        update forecast_state set failing_since = coalesce(failing_since, :now), failure = :what,
                            next_try_at = :nextTry
                        where production_id = :production
                        """)
                .param("now", Timestamp.from(clock.instant()))
                .param("what", what)
                .param("nextTry", Timestamp.from(nextTryAt))
                .param("production", productionId)
                .update();
    }

    /**
     * Whether nothing was asked for after the request of that number; then the reasons are forgotten. Keeps others from
     * asking until the transaction ends.
     */
    boolean isAnswered(UUID productionId, long number) {
        return jdbc.sql("""
                        update forecast_state set because = case when asked <= :number then '{}' else because end
                        where production_id = :production returning asked <= :number
                        """)
                .param("number", number)
                .param("production", productionId)
                .query(Boolean.class)
                .optional()
                .orElse(true);
    }

    /** Forecasts of other methods than today's only tell what room there was. */
    ForecastRun.Standing standing(UUID productionId) {
        return jdbc.sql("""
                        select s.computed_at as checked_at, s.asked > s.answered as outdated,
                               s.failing_since, s.failure, s.next_try_at,
                               (select array_agg(f.leg_id) from forecast_flag f
                                where f.production_id = s.production_id
                                  and (select act from forecast_flag_act where flag_id = f.id order by number desc limit 1)
                                      in ('OPENED', 'REOPENED', 'WOKEN', 'ACKNOWLEDGED')) as raised,
                               r.id, r.computed_at, r.because, r.inputs, r.results
                        from forecast_state s
                        left join lateral (select * from forecast_run
                                           where production_id = s.production_id and method_id = ?
                                           order by id desc limit 1) r on true
                        where s.production_id = ?
                        """)
                .params(SimulatedForecast.METHOD_ID, productionId)
                .query((row, number) -> new ForecastRun.Standing(
                        row.getString("inputs") == null ? null : run(row),
                        instant(row, "checked_at"),
                        row.getBoolean("outdated"),
                        ids(row, "raised"),
                        failure(row)))
                .optional()
                .orElse(ForecastRun.Standing.NONE);
    }

    /** The schedule as the first forecast of today's method found it. */
    Optional<LearnedWords.FirstPlan> firstPlan(UUID productionId) {
        return jdbc.sql("""
                        select today, inputs ->> 'days' as days from forecast_run
                        where production_id = ? and method_id = ? order by id limit 1
                        """)
                .params(productionId, SimulatedForecast.METHOD_ID)
                .query((row, number) -> new LearnedWords.FirstPlan(
                        row.getObject("today", LocalDate.class),
                        List.of(ForecastJson.read(row.getString("days"), ForecastDay[].class))))
                .optional();
    }

    /** What the newest forecast says of days to come, and the schedule as the first one found it. */
    record DaysThenAndNow(RecordingOutlook recording, List<ForecastDay> firstDays) {}

    Optional<DaysThenAndNow> daysThenAndNow(UUID productionId) {
        return jdbc.sql("""
                        select newest.results ->> 'recording' as recording, first.inputs ->> 'days' as days
                        from (select results from forecast_run where production_id = :production and method_id = :method
                              order by id desc limit 1) newest,
                             (select inputs from forecast_run where production_id = :production and method_id = :method
                              order by id limit 1) first
                        """)
                .param("production", productionId)
                .param("method", SimulatedForecast.METHOD_ID)
                .query((row, number) -> new DaysThenAndNow(
                        ForecastJson.read(row.getString("recording"), RecordingOutlook.class),
                        List.of(ForecastJson.read(row.getString("days"), ForecastDay[].class))))
                .optional();
    }

    /** The first forecast of each date, in their order. */
    List<PastForecast> firstOfEachDate(UUID productionId) {
        return jdbc.sql("""
                        select distinct on (today) today, results ->> 'recording' as recording from forecast_run
                        where production_id = ? and method_id = ? order by today, id
                        """)
                .params(productionId, SimulatedForecast.METHOD_ID)
                .query((row, number) -> new PastForecast(
                        row.getObject("today", LocalDate.class),
                        ForecastJson.read(row.getString("recording"), RecordingOutlook.class)))
                .list();
    }

    /** The date of each production's newest forecast; of those that have something to forecast: a leg and a day. */
    Map<UUID, LocalDate> newestDates() {
        Map<UUID, LocalDate> dates = new HashMap<>();
        jdbc.sql("""
                        select p.id, (select coalesce(max(r.today), date '0001-01-01') from forecast_run r
                                      where r.production_id = p.id and r.method_id = ?) as today
                        from production_production p
                        where exists (select 1 from production_leg l where l.production_id = p.id)
                          and exists (select 1 from schedule_day d where d.production_id = p.id)
                        """).param(SimulatedForecast.METHOD_ID).query(row -> {
            dates.put(row.getObject("id", UUID.class), row.getObject("today", LocalDate.class));
        });
        return dates;
    }

    /** For each leg the room at the end of past dates: what the last forecast of that date found. */
    Map<UUID, Map<LocalDate, Long>> roomOnPastDates(UUID productionId, LocalDate before) {
        Map<UUID, Map<LocalDate, Long>> rooms = new HashMap<>();
        jdbc.sql("""
                        select r.today, (leg ->> 'legId')::uuid as leg_id, (leg ->> 'roomNowBytes')::bigint as bytes
                        from (select distinct on (today) today, results from forecast_run
                              where production_id = ? and today < ? order by today, id desc) r
                        cross join jsonb_array_elements(r.results -> 'legs') leg
                        """).params(productionId, Date.valueOf(before)).query(row -> {
            rooms.computeIfAbsent(row.getObject("leg_id", UUID.class), id -> new TreeMap<>())
                    .put(row.getObject("today", LocalDate.class), row.getLong("bytes"));
        });
        return rooms;
    }

    private static ForecastRun run(ResultSet row) throws SQLException {
        return new ForecastRun(
                row.getLong("id"),
                row.getTimestamp("computed_at").toInstant(),
                because(row),
                ForecastJson.read(row.getString("inputs"), ForecastInput.class),
                ForecastJson.read(row.getString("results"), StorageForecast.class));
    }

    private static @Nullable Failure failure(ResultSet row) throws SQLException {
        Instant since = instant(row, "failing_since");
        return since == null
                ? null
                : new Failure(
                        since,
                        row.getString("failure"),
                        row.getTimestamp("next_try_at").toInstant());
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        Timestamp timestamp = row.getTimestamp(column);
        return timestamp == null ? null : timestamp.toInstant();
    }

    private static Set<UUID> ids(ResultSet row, String column) throws SQLException {
        Array ids = row.getArray(column);
        return ids == null ? Set.of() : Set.of((UUID[]) ids.getArray());
    }

    private static Set<Because> because(ResultSet row) throws SQLException {
        Set<Because> reasons = EnumSet.noneOf(Because.class);
        Array names = row.getArray("because");
        if (names != null) {
            Arrays.stream((String[]) names.getArray()).map(Because::valueOf).forEach(reasons::add);
        }
        return reasons;
    }

    private static String[] names(Set<Because> because) {
        return because.stream().map(Enum::name).toArray(String[]::new);
    }
}
