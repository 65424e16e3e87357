package rollbook.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.DefaultApplicationArguments;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestBuilders;
import org.springframework.security.test.web.servlet.response.SecurityMockMvcResultMatchers;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.forecast.Forecasts;
import rollbook.forecast.OrderFlag;
import rollbook.forecast.StorageOutlook;
import rollbook.testing.DemoTest;
import rollbook.testing.Jobs;

/** The demo is what the job's description asks for; the numbers are from there. */
@DemoTest
class DemoProductionTests {
    @Autowired
    JdbcClient jdbc;

    @Autowired
    DemoProduction demo;

    @Autowired
    Clock clock;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    MockMvc requests;

    @Autowired
    Jobs jobs;

    @Autowired
    Forecasts forecasts;

    @Test
    void twentyFourDaysOverFiveWeeksWithTheEleventhInProgress() {
        assertThat(count("schedule_day d join production_unit u on u.id = d.unit_id where u.name = 'Main unit'"))
                .isEqualTo(24);
        assertThat(number("""
                        select max(d.date) - min(d.date) from schedule_day d
                        join production_unit u on u.id = d.unit_id where u.name = 'Main unit'
                        """)).as("days from the first to the last of them").isBetween(32L, 34L);
        assertThat(jdbc.sql("""
                        select d.number from schedule_day d join production_unit u on u.id = d.unit_id
                        where u.name = 'Main unit' and d.state = 'SHOOTING'
                        """).query(Integer.class).list()).containsExactly(11);
        assertThat(count("""
                        schedule_day d join production_unit u on u.id = d.unit_id
                        where u.name = 'Main unit' and d.number <= 10 and d.state = 'WRAPPED'
                        """)).isEqualTo(10);
        assertThat(count("schedule_day where extract(isodow from date) > 5")).isZero();
        assertThat(count("audit_act where action = 'day.slipped'")).isEqualTo(1);
        assertThat(number("""
                        select (select date from schedule_day where number = 8 and unit_id = u.id)
                             - (select date from schedule_day where number = 7 and unit_id = u.id)
                        from production_unit u where name = 'Main unit'
                        """))
                .as("a working day without shooting before day 8")
                .isGreaterThan(1);
    }

    @Test
    void aboutAHundredAndTwentyRolls() {
        assertThat(count("offload_roll")).isBetween(115L, 125L);
        assertThat(number("""
                        select count(*) from offload_roll r join inventory_item i on i.id = r.card_id
                        where r.size_bytes > i.capacity_bytes
                        """)).as("rolls that wouldn't fit on their card").isZero();
        assertThat(number("""
                        select count(*) from offload_roll one join offload_roll other on other.card_id = one.card_id
                        and other.id <> one.id and other.loaded_at between one.loaded_at and one.pulled_at
                        """)).as("cards in two cameras at once").isZero();
    }

    @Test
    void threeCopiesEachHoldACard() {
        Map<String, String> verdicts = new TreeMap<>();
        jdbc.sql("""
                        select r.code, v.verdict, v.different, v.missing, i.card_state
                        from (select distinct on (copy_id) * from verification_verdict order by copy_id, id desc) v
                        join offload_roll r on r.id = v.roll_id join inventory_item i on i.id = r.card_id
                        where v.verdict not in ('PROVEN', 'UNKNOWN')
                        """).query(row -> {
            verdicts.put(
                    row.getString("code"),
                    "%s %d %d %s"
                            .formatted(
                                    row.getString("verdict"),
                                    row.getLong("different"),
                                    row.getLong("missing"),
                                    row.getString("card_state")));
        });
        assertThat(verdicts)
                .isEqualTo(Map.of(
                        Story.FAILED, "FAILED 3 0 HELD",
                        Story.INCOMPLETE, "INCOMPLETE 0 2 HELD",
                        Story.CONSISTENT, "CONSISTENT 0 0 HELD"));
    }

    @Test
    void aCardInEveryState() {
        List<String> states = jdbc.sql("select distinct card_state from inventory_item where kind = 'CARD'")
                .query(String.class)
                .list();
        assertThat(states)
                .containsExactlyInAnyOrder("BLANK", "IN_CAMERA", "EXPOSED", "COPYING", "HELD", "CLEAR_TO_ERASE");
        assertThat(count("verification_erasure")).as("cards of earlier days").isGreaterThan(100);
        assertThat(count("verification_alarm")).isZero();
        assertThat(count("inventory_item where kind = 'CARD'")).isEqualTo(24);
    }

    @Test
    void oneDocumentIsRejectedAndOneWaitsForPeople() {
        assertThat(jdbc.sql("select problem from verification_reading where state = 'REJECTED'")
                        .query(String.class)
                        .list())
                .containsExactly("DIGEST_LENGTH");
        assertThat(count("""
                        verification_part p
                        where not exists (select 1 from verification_assignment a where a.part_id = p.id)
                        """)).isEqualTo(2);
        assertThat(count("verification_reading where state in ('WAITING', 'READING')"))
                .isZero();
    }

    @Test
    void aPoolRunsShortAndAHiredDriveIsDueBack() {
        jobs.run();
        StorageOutlook outlook = forecasts.latest(production()).orElseThrow();
        assertThat(outlook.legs())
                .filteredOn(leg -> leg.flag() != OrderFlag.NONE)
                .singleElement()
                .satisfies(leg -> {
                    assertThat(leg.name()).isEqualTo(Stock.TAPE);
                    assertThat(leg.flag()).isEqualTo(OrderFlag.ORDER_BY);
                    assertThat(leg.runOutOn()).isBefore(outlook.endOfShow());
                });
        assertThat(number("""
                        select count(*) from inventory_item
                        where kind = 'DRIVE' and ownership = 'HIRED' and hired_until - current_date between 1 and 8
                        """)).isEqualTo(1);
    }

    @Test
    void whatHappenedHappenedInOrderAndBeforeNow() {
        for (String moment : List.of(
                "audit_act.at",
                "offload_session.started_at",
                "verification_document.uploaded_at",
                "verification_verdict.judged_at",
                "verification_clearance.cleared_at")) {
            String[] names = moment.split("\\.");
            assertThat(jdbc.sql("select max(%s) from %s".formatted(names[1], names[0]))
                            .query(java.sql.Timestamp.class)
                            .single()
                            .toInstant())
                    .as(moment)
                    .isBefore(Instant.now());
        }
        assertThat(count("audit_act one join audit_act next on next.id = one.id + 1 where next.at < one.at"))
                .as("acts on record before those that came first")
                .isZero();
        assertThat(count("""
                        verification_clearance c join verification_verdict v on v.id = any (c.verdict_ids)
                        where v.judged_at > c.cleared_at
                        """)).as("cards cleared before their proof").isZero();
    }

    @Test
    void someSessionsWereSlowerThanExpected() {
        List<Double> reached = jdbc.sql("""
                        select s.size_bytes / extract(epoch from s.ended_at - s.started_at)
                             / least(card.read_bytes_per_second, reader.read_bytes_per_second, adapter.read_bytes_per_second,
                                   (select min(i.write_bytes_per_second) from offload_destination o
                                    join offload_copy c on c.id = o.copy_id join inventory_item i on i.id = c.item_id
                                    where o.session_id = s.id))
                        from offload_session s join offload_roll r on r.id = s.roll_id
                        join inventory_item card on card.id = r.card_id join inventory_item reader on reader.id = s.reader_id
                        left join inventory_item adapter on adapter.id = s.adapter_id where s.outcome = 'FINISHED'
                        """).query(Double.class).list();
        assertThat(reached).allMatch(share -> share > 0.4 && share <= 1);
        assertThat(reached).filteredOn(share -> share < 0.7).hasSizeBetween(4, 20);
    }

    @Test
    void aSecondStartChangesNothing() {
        Map<String, Long> before = rows();
        assertThat(before.get("offload_roll")).isPositive();
        demo.run(new DefaultApplicationArguments());
        assertThat(rows()).isEqualTo(before);
    }

    @Test
    void afterTheStoryTheClockIsEverybodysAgain() {
        assertThat(clock).isInstanceOf(DemoClock.class);
        assertThat(clock.instant())
                .isBetween(Instant.now().minusSeconds(5), Instant.now().plusSeconds(5));
    }

    @Test
    void theStoryTellsItsTimeToItsOwnThreadOnly() throws InterruptedException {
        DemoClock told = new DemoClock();
        Instant longAgo = Instant.parse("2001-02-03T04:05:06Z");
        told.tell(longAgo);
        Instant[] elsewhere = new Instant[1];
        Thread other = new Thread(() -> elsewhere[0] = told.instant());
        other.start();
        other.join();
        assertThat(told.withZone(Show.ZONE).instant()).isEqualTo(longAgo);
        assertThat(elsewhere[0]).isAfter(longAgo.plusSeconds(1_000_000));
    }

    @Test
    void theSignInPageListsAccountsThatWork() throws Exception {
        Document page =
                Jsoup.parse(mvc.get().uri("/sign-in").exchange().getResponse().getContentAsString());
        assertThat(page.select("main table td:first-child code").eachText())
                .contains("wrangler", "office", "post", "reader", "administrator");
        for (Account account : Account.values()) {
            requests.perform(SecurityMockMvcRequestBuilders.formLogin("/sign-in")
                            .user(account.signInName())
                            .password(Account.PASSWORD))
                    .andExpect(SecurityMockMvcResultMatchers.authenticated());
        }
    }

    private Map<String, Long> rows() {
        Map<String, Long> rows = new TreeMap<>();
        List<String> tables = jdbc.sql("""
                        select table_name from information_schema.tables where table_schema = 'public'
                        and table_type = 'BASE TABLE' and table_name not like 'spring_session%'
                        """).query(String.class).list();
        tables.forEach(table -> rows.put(table, count(table)));
        return rows;
    }

    private UUID production() {
        return jdbc.sql("select id from production_production")
                .query(UUID.class)
                .single();
    }

    private long count(String from) {
        return number("select count(*) from " + from);
    }

    private long number(String query) {
        return jdbc.sql(query).query(Long.class).single();
    }
}
