package rollbook.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.DefaultApplicationArguments;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;
import rollbook.forecast.Forecasts;
import rollbook.forecast.OrderFlag;
import rollbook.forecast.StorageOutlook;
import rollbook.testing.DemoTest;

/**
 * The story works out whenever the portal is first started: on a Sunday before dawn, on the Monday after the clocks were
 * changed (29 March 2026). What is played here is rolled back.
 */
@DemoTest
class AnyHourTests {
    @Autowired
    JdbcClient jdbc;

    @Autowired
    DemoProduction demo;

    @Autowired
    DemoClock clock;

    @Autowired
    Forecasts forecasts;

    @Autowired
    TransactionTemplate transaction;

    @ParameterizedTest
    @ValueSource(strings = {"2026-11-22T05:10", "2026-03-30T06:30"})
    void theStoryWorksOutWheneverItBegins(String localTime) {
        Instant started = LocalDateTime.parse(localTime).atZone(Show.ZONE).toInstant();
        transaction.executeWithoutResult(status -> {
            status.setRollbackOnly();
            jdbc.sql("truncate " + String.join(", ", tables()) + " cascade").update();
            clock.tell(started);
            demo.run(new DefaultApplicationArguments());
            assertThat(count("offload_roll")).isEqualTo(121);
            assertThat(jdbc.sql("select distinct card_state from inventory_item where kind = 'CARD'")
                            .query(String.class)
                            .list())
                    .hasSize(6);
            assertThat(count("audit_act one join audit_act next on next.id = one.id + 1 where next.at < one.at"))
                    .isZero();
            clock.tell(started);
            try {
                UUID production = jdbc.sql("select id from production_production")
                        .query(UUID.class)
                        .single();
                forecasts.compute(production);
                assertThat(forecasts.latest(production).orElseThrow().legs())
                        .extracting(StorageOutlook.Leg::flag)
                        .containsExactlyInAnyOrder(OrderFlag.ORDER_BY, OrderFlag.NONE, OrderFlag.NONE);
            } finally {
                clock.endStory();
            }
        });
    }

    private List<String> tables() {
        return jdbc.sql("""
                        select table_name from information_schema.tables where table_schema = 'public'
                        and table_type = 'BASE TABLE' and table_name not like 'flyway%'
                        """).query(String.class).list();
    }

    private long count(String from) {
        return jdbc.sql("select count(*) from " + from).query(Long.class).single();
    }
}
