package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.assertj.MockMvcTester;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;

/** What a show’s own offloads say of the next one. Stated are 500 MB/s for everything. */
@PortalTest
class ShowRatesTests {
    private static final long MB = 1_000_000;

    @Autowired
    Fixtures fixtures;

    @Autowired
    MockMvcTester mvc;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Clock clock;

    private Scene scene;
    private int cards = 1;

    @BeforeEach
    void setUp() {
        scene = new Scene(fixtures, mvc);
    }

    @Test
    void theNextOffloadIsExpectedToRunAsTheEarlierOnesDid() {
        ran(400);
        ran(412);
        ran(430);
        UUID roll = pulled();

        assertThat(scene.see("rolls/" + roll + "/offload").selectFirst("main").text())
                // 31.5 min × 60 s × 24 MB/s = 45.36 GB, in 110 s
                .contains("As proposed it should take about 1 min, at 412 MB/s"
                        + " (as 3 earlier offloads through READER-1 ran; the makers’ figures would say 500 MB/s).");
        UUID session = Scene.sentTo(scene.post("rolls/" + roll + "/offload", Role.WRANGLER, scene.startForm()));
        assertThat(scene.see("offloads/" + session).selectFirst("main").text())
                .contains("412 MB/s (as 3 earlier offloads through READER-1 ran;"
                        + " the makers’ figures would say 500 MB/s)");
        assertThat(scene.see("offloads").selectFirst("main section table").text())
                .contains("412 MB/s")
                .doesNotContain("500 MB/s");
    }

    @Test
    void theExpectedEndFollowsTheMeasuredRate() {
        ran(100);
        ran(100);
        ran(100);
        UUID roll = pulled();
        jdbc.sql("update offload_roll set size_bytes = 36000000000 where id = ?")
                .param(roll)
                .update();
        UUID session = start(roll);
        // 36 GB at 100 MB/s are 6 minutes; a few seconds have passed since the start.
        assertThat(scene.see("offloads/" + session).selectFirst("main").text()).contains("in 5 min");
    }

    @Test
    void twoOffloadsAreTooFewAndTheMakersFiguresStay() {
        ran(400);
        ran(412);
        UUID roll = pulled();

        assertThat(scene.see("rolls/" + roll + "/offload").selectFirst("main").text())
                .contains("at 500 MB/s (by the makers’ figures)");
        assertThat(scene.see("offloads/" + start(roll)).selectFirst("main").text())
                .contains("500 MB/s (limited by CARD-" + cards + ")");
    }

    @Test
    void anEndedOffloadIsComparedWithTheMakersFigures() {
        ran(400);
        ran(400);
        ran(400);
        UUID last = ran(400);

        assertThat(scene.see("offloads/" + last).selectFirst("main").text())
                .contains("400 MB/s (20 % slower than expected)", "500 MB/s (limited by");
    }

    @Test
    void anotherProductionsOffloadsAndThoseThatBrokeOffTeachNothing() {
        Scene here = scene;
        scene = new Scene(fixtures, mvc);
        ran(400);
        ran(400);
        ran(400);
        scene = here;
        for (int i = 0; i < 3; i++) {
            offloads.abandon(scene.wrangler, start(pulled()), "lost power");
        }
        assertThat(scene.see("rolls/" + pulled() + "/offload")
                        .selectFirst("main")
                        .text())
                .contains("by the makers’ figures");
    }

    @Test
    void withoutAnySpeedNothingIsEstimated() {
        jdbc.sql(
                        "update inventory_item set read_bytes_per_second = null, write_bytes_per_second = null where production_id = ?")
                .param(scene.production.id)
                .update();
        UUID roll = pulled();
        jdbc.sql("update inventory_item set read_bytes_per_second = null where production_id = ?")
                .param(scene.production.id)
                .update();
        assertThat(scene.see("rolls/" + roll + "/offload").selectFirst("main").text())
                .doesNotContain("As proposed");
    }

    /** A thousand seconds through READER-1 onto both legs’ drives, an hour after the one before. */
    private UUID ran(long megabytesPerSecond) {
        UUID session = start(pulled());
        offloads.finish(scene.wrangler, session, megabytesPerSecond * MB * 1000);
        Instant start = clock.instant().minus(Duration.ofHours(100 - cards));
        jdbc.sql("update offload_session set started_at = ?, ended_at = ? where id = ?")
                .params(Timestamp.from(start), Timestamp.from(start.plusSeconds(1000)), session)
                .update();
        return session;
    }

    private UUID start(UUID roll) {
        return offloads.start(
                scene.wrangler,
                roll,
                scene.reader,
                null,
                List.of(
                        new Offloads.Destination(scene.shuttle, scene.shuttleLeg),
                        new Offloads.Destination(scene.archive, scene.archiveLeg)));
    }

    private UUID pulled() {
        cards++;
        UUID card = scene.production.item("CARD-" + cards, "CARD", scene.set, null);
        UUID id = rolls.load(scene.wrangler, "A%03d".formatted(cards), scene.camera, scene.day, card, scene.format);
        rolls.pull(scene.wrangler, id, new BigDecimal("31.5"));
        return id;
    }
}
