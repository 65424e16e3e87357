package rollbook.inventory;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class CustodyTrailTests {

    @Test
    void linksWithTheSameHolderAtTheSamePlaceAreOneStay() {
        CustodyTrail trail = CustodyTrail.of(List.of(
                entry(0, CustodyAct.REGISTERED, "Set", "", Condition.GOOD),
                entry(1, CustodyAct.MOVED, "Set", "", Condition.GOOD),
                entry(2, CustodyAct.MOVED, "Set", "the courier", Condition.GOOD),
                entry(3, CustodyAct.MOVED, "Post house", "", Condition.GOOD)));

        assertThat(trail.stays())
                .containsExactly(
                        new CustodyTrail.Stay("Set", "", at(0), at(2), "P0", false),
                        new CustodyTrail.Stay("Set", "the courier", at(2), at(3), "P2", false),
                        new CustodyTrail.Stay("Post house", "", at(3), null, "P3", false));
    }

    @Test
    void quarantineIsAStayOfItsOwn() {
        CustodyTrail trail = CustodyTrail.of(List.of(
                entry(0, CustodyAct.REGISTERED, "Set", "", Condition.GOOD),
                entry(1, CustodyAct.QUARANTINED, "Set", "", Condition.QUARANTINED),
                entry(2, CustodyAct.RELEASED, "Set", "", Condition.GOOD)));

        assertThat(trail.stays().stream().map(CustodyTrail.Stay::doubted)).containsExactly(false, true, false);
    }

    @Test
    void whatIsLostIsWithNobodyUntilItIsFound() {
        CustodyTrail trail = CustodyTrail.of(List.of(
                entry(0, CustodyAct.REGISTERED, "Set", "", Condition.GOOD),
                entry(1, CustodyAct.LOST, "Set", "", Condition.LOST),
                entry(3, CustodyAct.FOUND, "Set", "", Condition.QUARANTINED),
                entry(4, CustodyAct.RETIRED, "Set", "", Condition.RETIRED)));

        assertThat(trail.stays())
                .containsExactly(
                        new CustodyTrail.Stay("Set", "", at(0), at(1), "P0", false),
                        new CustodyTrail.Stay("Set", "", at(3), at(4), "P3", true));
    }

    private static Instant at(int hours) {
        return Instant.parse("2026-03-02T00:00:00Z").plusSeconds(3600L * hours);
    }

    private static CustodyEntry entry(int hours, CustodyAct act, String place, String holder, Condition condition) {
        return new CustodyEntry(at(hours), act, place, holder, condition, "", "P" + hours, false);
    }
}
