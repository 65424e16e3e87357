package rollbook.offload;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A camera's letter and a running number of three digits is common practice on set; no standard says so. */
class RollCodesTests {
    @Test
    void aCamerasFirstRollIsNumberOne() {
        assertThat(RollCodes.next("A", List.of())).isEqualTo("A001");
    }

    @Test
    void theNumberGoesOnFromTheHighest() {
        assertThat(RollCodes.next("A", List.of("A013", "A014"))).isEqualTo("A015");
        assertThat(RollCodes.next("A", List.of("A014", "A013"))).isEqualTo("A015");
    }

    @Test
    void theNumberGrowsByADigitWhenItMust() {
        assertThat(RollCodes.next("B", List.of("B099"))).isEqualTo("B100");
        assertThat(RollCodes.next("B", List.of("B999"))).isEqualTo("B1000");
        assertThat(RollCodes.next("B", List.of("B999", "B1000"))).isEqualTo("B1001");
        assertThat(RollCodes.next("B", List.of("B99999999999999999999"))).isEqualTo("B100000000000000000000");
    }

    @Test
    void aWayOfNumberingOfTheShowsOwnIsKept() {
        assertThat(RollCodes.next("A", List.of("U2-A07"))).isEqualTo("U2-A08");
        assertThat(RollCodes.next("A", List.of("A014", "TESTA", "N09", "N08"))).isEqualTo("N10");
        assertThat(RollCodes.next("A", List.of("a014"))).isEqualTo("A015");
    }

    @Test
    void codesWithoutANumberSayNothing() {
        assertThat(RollCodes.next("A", List.of("TESTA"))).isEqualTo("A001");
        assertThat(RollCodes.next("A", List.of("A003", "TESTA"))).isEqualTo("A004");
    }
}
