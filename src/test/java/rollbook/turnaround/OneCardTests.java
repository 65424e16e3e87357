package rollbook.turnaround;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class OneCardTests {
    @Test
    void oneCardAndOneCamera() {
        // Full at 10:00, copied at 20:00, full at 30:00, wrap: copied at 40:00. The camera waits from 10 to 20.
        DayResult day = TestDay.of(1, 30, TestDay.rolling(3), "CAM").played();

        assertThat(day.lastProvenMillis()).isEqualTo(40 * TestDay.MINUTE);
        assertThat(day.waitingMillis()).isEqualTo(10 * TestDay.MINUTE);
    }
}
