package rollbook.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimecodeTests {

    @ParameterizedTest
    @CsvSource({
        "00:00:00:00, 24, 0",
        "01:00:00:00, 24, 86400",
        "00:00:59;29, 30, 1799",
        "00:01:00;02, 30, 1800",
        "00:01:00;04, 60, 3600",
        "00:10:00;00, 30, 17982"
    })
    void countsFramesFromMidnight(String text, int count, long expected) {
        assertThat(Timecode.frameNumber(text, count)).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "00:01:00;00, 30",
        "00:11:00;01, 30",
        "00:01:00;03, 60",
        "00:00:00:24, 24",
        "00:60:00:00, 24",
        "00:00:00;00, 25",
        "1:0:0:0, 25",
        "'', 25"
    })
    void refusesNumbersThatAreNeverCounted(String text, int count) {
        assertThatIllegalArgumentException().isThrownBy(() -> Timecode.frameNumber(text, count));
    }

    /** Walks a whole hour: every number that exists is one more than the number before it. */
    @Test
    void dropFrameNumbersFollowOneAnother() {
        long expected = 0;
        for (int second = 0; second < 3600; second++) {
            int minute = second / 60;
            int first = minute % 10 != 0 && second % 60 == 0 ? 2 : 0;
            for (int frame = first; frame < 30; frame++) {
                String text = String.format(Locale.ROOT, "00:%02d:%02d;%02d", minute, second % 60, frame);
                assertThat(Timecode.frameNumber(text, 30)).as(text).isEqualTo(expected++);
            }
        }
        assertThat(expected).isEqualTo(107_892);
    }
}
