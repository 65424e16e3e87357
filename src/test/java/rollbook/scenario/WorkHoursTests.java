package rollbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import rollbook.scenario.WorkHours.Span;

/** Worked by hand. */
class WorkHoursTests {
    @Test
    void breaksAreNoWorkingTime() {
        WorkHours hours = WorkHours.of("08:00", "19:00", "13:00-14:00, 17:00-17:15");
        assertThat(hours.workMinutes()).isEqualTo(11 * 60 - 75);
        assertThat(hours.breaks()).containsExactly(new Span(780, 840), new Span(1020, 1035));
    }

    @Test
    void aNightShootGoesOnAfterMidnight() {
        WorkHours hours = WorkHours.of("18:00", "05:30", "23:45-00:30");
        assertThat(hours.wrapMinutes()).isEqualTo(29 * 60 + 30);
        assertThat(hours.breaks()).containsExactly(new Span(23 * 60 + 45, 24 * 60 + 30));
        assertThat(hours.workMinutes()).isEqualTo(11 * 60 + 30 - 45);
        assertThat(hours.at("02:00")).isEqualTo(26 * 60);
        assertThat(hours.at("18:00")).isEqualTo(18 * 60);
    }

    @Test
    void breaksThatOverlapAreOneAndThoseOutsideTheDayAreNone() {
        WorkHours hours = WorkHours.of("08:00", "14:00", "13:00-13:30, 13:15-15:00, 20:00-21:00");
        assertThat(hours.breaks()).containsExactly(new Span(780, 840));
        assertThat(hours.workMinutes()).isEqualTo(5 * 60);
    }
}
