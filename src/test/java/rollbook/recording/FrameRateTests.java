package rollbook.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rollbook.quantity.Fraction;

class FrameRateTests {

    /** The exact values are those of SMPTE ST 12-1 and ST 2019-1 tables; the short forms are common practice, no source. */
    @ParameterizedTest
    @CsvSource({
        "24, 24, 24",
        "25, 25, 25",
        "25.0, 25, 25",
        "24.00, 24, 24",
        "23.976, 24000/1001, 23.976",
        "23.98, 24000/1001, 23.976",
        "23.97, 24000/1001, 23.976",
        "23.9760, 24000/1001, 23.976",
        "29.97, 30000/1001, 29.97",
        "59.94, 60000/1001, 59.94",
        "47.952, 48000/1001, 47.952",
        "119.88, 120000/1001, 119.88",
        "24000/1001, 24000/1001, 23.976",
        "50/2, 25, 25",
        "12.5, 25/2, 12.5",
        "2997/125, 2997/125, 2997/125",
        "18.5, 37/2, 18.5",
        "1/3, 1/3, 1/3"
    })
    void readsWhatCrewsWriteAndKeepsItExact(String written, String exact, String text) {
        FrameRate rate = FrameRate.parse(written);
        assertThat(rate.exactText()).isEqualTo(exact);
        assertThat(rate.text()).isEqualTo(text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "fast", "-24", "0", "0.00", "24,5", "24/0", "1e3", "100001", "999999999999999999.99", "NaN"})
    void refusesWhatIsNoFrameRate(String text) {
        InvalidFormat error = catchThrowableOfType(InvalidFormat.class, () -> FrameRate.parse(text));
        assertThat(error.field()).isEqualTo("frameRate");
    }

    @Test
    void textAlwaysReadsBack() {
        long seed = 1001L;
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 2000; i++) {
            int below = switch (i % 4) {
                case 0 -> 1;
                case 1 -> 1001;
                case 2 -> 1000;
                default -> 1 + random.nextInt(5000);
            };
            FrameRate rate = FrameRate.of(1 + random.nextInt(240 * below), below);
            assertThat(FrameRate.parse(rate.text())).as("seed %d", seed).isEqualTo(rate);
            assertThat(FrameRate.parse(rate.exactText())).as("seed %d", seed).isEqualTo(rate);
        }
    }

    @Test
    void countsFramesAndSeconds() {
        FrameRate rate = FrameRate.parse("29.97");
        assertThat(rate.framesIn(Fraction.of(1001))).isEqualTo(Fraction.of(30_000));
        assertThat(rate.secondsFor(30_000)).isEqualTo(Fraction.of(1001));
        assertThat(rate).isLessThan(FrameRate.of(30));
        assertThatThrownBy(() -> FrameRate.of(0)).isInstanceOf(InvalidFormat.class);
    }
}
