package rollbook.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rollbook.turnaround.Activity;
import rollbook.turnaround.Activity.Kind;

class StretchTests {
    private static final long MINUTE = 60_000;

    private static Activity take(long from, long to, String card) {
        return activity(Kind.RECORDING, from, to, card);
    }

    private static Activity activity(Kind kind, long from, long to, String card) {
        return new Activity(Activity.Lane.CAMERA, "A", kind, from * MINUTE, to * MINUTE, card, "A", null);
    }

    @Test
    void takesOnOneCardAreDrawnAsOneBarThatCountsWhatWasRecorded() {
        List<Stretch> drawn = Stretch.of(List.of(take(10, 13, "1"), take(20, 24, "1"), take(30, 32, "2")));
        assertThat(drawn).extracting(Stretch::card).containsExactly("1", "2");
        assertThat(drawn.get(0).fromMillis()).isEqualTo(10 * MINUTE);
        assertThat(drawn.get(0).toMillis()).isEqualTo(24 * MINUTE);
        assertThat(drawn.get(0).busyMillis()).isEqualTo(7 * MINUTE);
        assertThat(drawn).extracting(Stretch::activities).containsExactly(2, 1);
    }

    @Test
    void aLongPauseOrAnythingBetweenDrawsThemApart() {
        assertThat(Stretch.of(List.of(take(10, 13, "1"), take(44, 46, "1")))).hasSize(2);
        assertThat(Stretch.of(List.of(take(10, 13, "1"), activity(Kind.BREAK, 13, 20, null), take(20, 22, "1"))))
                .hasSize(3);
    }

    @Test
    void whatTakesNoTimeIsNotDrawn() {
        assertThat(Stretch.of(List.of(activity(Kind.CHANGING, 13, 13, "1")))).isEmpty();
    }
}
