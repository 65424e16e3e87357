package rollbook.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import rollbook.inventory.Condition;
import rollbook.inventory.Custody;
import rollbook.inventory.MediaItems;
import rollbook.offload.Copies;
import rollbook.offload.Offloads;
import rollbook.offload.Rolls;
import rollbook.production.Membership;
import rollbook.production.Role;
import rollbook.testing.Fixtures;
import rollbook.testing.PortalTest;
import rollbook.testing.TestProduction;
import rollbook.web.Display;
import rollbook.web.Refusal;

/** What keeps media from leaving for good. */
@PortalTest
class HoldTests {
    @Autowired
    Fixtures fixtures;

    @Autowired
    Rolls rolls;

    @Autowired
    Offloads offloads;

    @Autowired
    Copies copies;

    @Autowired
    Custody custody;

    @Autowired
    MediaItems items;

    @Autowired
    Display display;

    @Autowired
    JdbcClient jdbc;

    private TestProduction production;
    private Membership wrangler;
    private Membership office;
    private UUID reader;
    private UUID one;
    private UUID other;
    private UUID roll;
    private UUID session;

    @BeforeEach
    void copyARollToTwoDrives() {
        production = fixtures.production();
        wrangler = production.as(Role.WRANGLER);
        office = production.as(Role.OFFICE);
        UUID set = production.place("Set", false);
        UUID unit = production.unit("Main");
        UUID card = production.item("CARD-1", "CARD", set, null);
        reader = production.item("READER-1", "READER", set, null);
        one = production.item("DRIVE-1", "DRIVE", set, null);
        other = production.item("DRIVE-2", "DRIVE", set, null);
        roll = rolls.load(
                wrangler,
                "A001",
                production.camera(unit, "A"),
                production.day(unit, 1, "SHOOTING"),
                card,
                production.format("Test format"));
        rolls.pull(wrangler, roll, BigDecimal.TEN);
        session = offloads.start(
                wrangler,
                roll,
                reader,
                null,
                List.of(new Offloads.Destination(one, null), new Offloads.Destination(other, null)));
    }

    @Test
    void whatAnOffloadRunsThroughStaysUntilItEnds() {
        assertThat(refusal(reader)).isEqualTo("READER-1 can’t leave. An offload of roll A001 runs through it.");
        judge(one, "PROVEN");
        judge(other, "PROVEN");
        assertThat(refusal(one)).contains("An offload of roll A001 runs through it.");
        offloads.finish(wrangler, session, 1_000);
        custody.retire(office, reader, "worn");
        custody.retire(office, one, "full");
        assertThat(items.get(production.id, one).condition()).isEqualTo(Condition.RETIRED);
    }

    @Test
    void aMediumStaysWhileARollOnItIsNotProvenElsewhere() {
        offloads.finish(wrangler, session, 1_000);
        String needed = "DRIVE-1 can’t leave. A001 has no proven copy on another medium that is in good condition.";
        judge(one, "PROVEN");
        assertThat(refusal(one)).startsWith(needed);
        for (String lesser : List.of("CONSISTENT", "SIZE_ONLY", "INCOMPLETE", "FAILED", "UNKNOWN")) {
            judge(other, lesser);
            assertThat(refusal(one)).as(lesser).startsWith(needed);
        }
        judge(other, "PROVEN");
        custody.quarantine(wrangler, other, "noise");
        assertThat(refusal(one)).startsWith(needed);
        custody.release(wrangler, other, "cable");
        custody.retire(office, one, "full");
    }

    @Test
    void aVerdictThatFellCountsNoMore() {
        offloads.finish(wrangler, session, 1_000);
        judge(other, "PROVEN");
        judge(other, "FAILED");
        assertThat(refusal(one)).contains("A001 has no proven copy");
    }

    @Test
    void ofTwoMediaThatProveARollOnlyOneLeavesEvenAtOnce() throws Exception {
        offloads.finish(wrangler, session, 1_000);
        judge(one, "PROVEN");
        judge(other, "PROVEN");
        CyclicBarrier together = new CyclicBarrier(2);
        ExecutorService people = Executors.newFixedThreadPool(2);
        int left = 0;
        try {
            List<Future<Boolean>> answers = people.invokeAll(Stream.of(one, other)
                    .map(item -> (Callable<Boolean>) () -> {
                        together.await();
                        return leaves(item);
                    })
                    .toList());
            for (Future<Boolean> answer : answers) {
                left += answer.get() ? 1 : 0;
            }
        } finally {
            people.shutdown();
        }
        assertThat(left).isEqualTo(1);
    }

    private boolean leaves(UUID item) {
        try {
            custody.retire(office, item, "full");
            return true;
        } catch (Refusal refused) {
            return false;
        }
    }

    private String refusal(UUID item) {
        return display.text(catchThrowableOfType(Refusal.class, () -> custody.retire(office, item, "full")));
    }

    private void judge(UUID item, String verdict) {
        UUID copy = copies.onItem(production.id, item).get(0).id();
        jdbc.sql("""
                        insert into verification_verdict (production_id, copy_id, roll_id, verdict, reasons, same, different,
                            missing, extra, moved, size_only, name_only, listed_twice, judged_at)
                        values (?, ?, ?, ?, '{}', 0, 0, 0, 0, 0, 0, 0, 0, now())
                        """).params(production.id, copy, roll, verdict).update();
    }
}
